// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NaturalModes.h"

#include "Circuit/Equilibration.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

/// Where the equations are solved: a positive real s in mid-audio that no network meets by its values.
constexpr Extended anchor = 7717.1387L;

constexpr Extended fastestTold = 1e14L;
constexpr Extended slowestTold = 1e-9L;

using ExtendedVector = Eigen::Matrix<Extended, Eigen::Dynamic, 1>;

/// P D^1/2 or Q D^1/2.
ExtendedMatrix storeColumns (const NodalEquations& equations, bool ofRows)
{
    const auto& stores = equations.stores();
    ExtendedMatrix columns = ExtendedMatrix::Zero (equations.size(), static_cast<Eigen::Index> (stores.size()));
    Eigen::Index column = 0;
    for (const auto& store : stores)
    {
        const Extended root = std::sqrt (store.value);
        const int plus = ofRows ? store.rowPlus : store.columnPlus;
        const int minus = ofRows ? store.rowMinus : store.columnMinus;
        if (plus >= 0)
            columns (plus, column) += root;
        if (minus >= 0)
            columns (minus, column) -= root;
        ++column;
    }
    return columns;
}

/// (G + s0 E)^-1 P D^1/2, solved on the equilibrated matrix.
ExtendedMatrix storeResponses (const NodalEquations& equations)
{
    auto matrix = equations.at (anchor);
    const Equilibration scales (matrix);
    const ExtendedMatrix scaled = matrix.real();
    const ExtendedMatrix target = scales.rows.asDiagonal() * storeColumns (equations, true);
    return scales.columns.asDiagonal() * scaled.fullPivLu().solve (target);
}

std::complex<double> toDouble (ExtendedComplex value)
{
    return { static_cast<double> (value.real()), static_cast<double> (value.imag()) };
}

NaturalMode makeMode (ExtendedComplex frequency, const Eigen::Matrix<ExtendedComplex, Eigen::Dynamic, 1>& solution)
{
    NaturalMode mode { toDouble (frequency), {} };
    const Extended largest = solution.cwiseAbs().maxCoeff();
    for (const auto& entry : solution)
        mode.solution.push_back (toDouble (largest > 0.0L ? entry / largest : entry));
    return mode;
}

/// The two of a conjugate pair have the same magnitude to the last bit, so a stable sort leaves them together.
bool comesBefore (const NaturalMode& a, const NaturalMode& b)
{
    return std::abs (a.frequency) < std::abs (b.frequency);
}

} // namespace

std::vector<NaturalMode> naturalModes (const NodalEquations& equations)
{
    std::vector<NaturalMode> modes;
    if (equations.stores().empty())
        return modes;

    const ExtendedMatrix responses = storeResponses (equations);
    const ExtendedMatrix reduced = storeColumns (equations, false).transpose() * responses;
    const Eigen::EigenSolver<ExtendedMatrix> solver (reduced);
    const ExtendedComplexMatrix directions = responses.cast<ExtendedComplex>() * solver.eigenvectors();

    for (Eigen::Index index = 0; index < reduced.rows(); ++index)
    {
        const ExtendedComplex inverse = solver.eigenvalues()[index];
        if (std::abs (inverse) * fastestTold < 1.0L)
            continue;
        ExtendedComplex frequency = anchor - 1.0L / inverse;
        if (std::abs (frequency) < slowestTold)
            frequency = 0.0L;
        modes.push_back (makeMode (frequency, directions.col (index)));
    }
    std::stable_sort (modes.begin(), modes.end(), comesBefore);
    return modes;
}

} // namespace stopwright
