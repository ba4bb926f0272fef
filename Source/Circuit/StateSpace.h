// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <Eigen/Core>

namespace stopwright
{

/// A linear network as x' = A x + B u + B_dot u', y = C x + D u.
///
/// x are volts of capacitors, amps of coils and volts of op-amp outputs, u the sources' and y the outputs' volts. B_dot is
/// not zero only where capacitors alone divide a source's voltage. States that follow from the others are
/// x_dependent = R [x; u].
/// Sized once on [control]; StateSpaceBuilder::build writes into it on [audio].
struct StateSpace
{
    using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

    StateSpace() = default;

    StateSpace (int states, int sources, int outputs, int dependents)
        : a (Matrix::Zero (states, states)),
          b (Matrix::Zero (states, sources)),
          bDot (Matrix::Zero (states, sources)),
          c (Matrix::Zero (outputs, states)),
          d (Matrix::Zero (outputs, sources)),
          dependent (Matrix::Zero (dependents, states + sources))
    {}

    int stateCount() const noexcept { return static_cast<int> (a.rows()); }

    int sourceCount() const noexcept { return static_cast<int> (d.cols()); }

    int outputCount() const noexcept { return static_cast<int> (d.rows()); }

    int dependentCount() const noexcept { return static_cast<int> (dependent.rows()); }

    Matrix a, b, bDot, c, d;
    Matrix dependent; ///< R
};

/// Where a row of such a matrix starts, also of one without columns.
inline double* rowOf (StateSpace::Matrix& matrix, int row) noexcept
{
    return matrix.data() + row * matrix.cols();
}

} // namespace stopwright
