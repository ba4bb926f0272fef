// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NodalSolver.h"

namespace stopwright
{

namespace
{

constexpr int mostRefinements = 8;
constexpr Extended stillness = 1e-17L;

} // namespace

NodalSolver::NodalSolver (const NodalEquations& equations, ExtendedComplex s)
    : matrix_ (equations.at (s)),
      scales_ (matrix_),
      factors_ (matrix_.cast<std::complex<double>>())
{}

ExtendedComplexMatrix NodalSolver::solve (const ExtendedComplexMatrix& rightSides) const
{
    if (rightSides.cols() == 0)
        return rightSides;
    const ExtendedComplexMatrix target = scales_.rows.asDiagonal() * rightSides;
    ExtendedComplexMatrix solution = ExtendedComplexMatrix::Zero (target.rows(), target.cols());
    ExtendedComplexMatrix residual = target;

    for (int pass = 0; pass < mostRefinements; ++pass)
    {
        // Scaled to 1 first: a residual of a residual may lie below the smallest double.
        const Extended size = residual.cwiseAbs().maxCoeff();
        if (size == 0.0L)
            break;
        const Eigen::MatrixXcd inDouble = (residual / size).cast<std::complex<double>>();
        const ExtendedComplexMatrix correction = factors_.solve (inDouble).cast<ExtendedComplex>() * size;
        solution += correction;
        if (correction.cwiseAbs().maxCoeff() <= stillness * solution.cwiseAbs().maxCoeff())
            break;
        residual = target - matrix_ * solution;
    }
    return scales_.columns.asDiagonal() * solution;
}

} // namespace stopwright
