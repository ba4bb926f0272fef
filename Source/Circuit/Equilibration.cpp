// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/Equilibration.h"

#include <cmath>

namespace stopwright
{

namespace
{

/// The excess of the largest entries over 1 shrinks to its square root in every pass; six bring 1e12 near 1.5.
constexpr int passes = 6;

/// Powers of two, so that scaling rounds nothing.
Extended scaleFor (Extended largest)
{
    return largest > 0.0L ? std::exp2 (-std::round (0.5L * std::log2 (largest))) : 1.0L;
}

} // namespace

Equilibration::Equilibration (ExtendedComplexMatrix& matrix)
    : rows (Scales::Ones (matrix.rows())),
      columns (Scales::Ones (matrix.cols()))
{
    // Size enough for scaling, and far cheaper than the root of the squares.
    ExtendedMatrix sizes = matrix.real().cwiseAbs() + matrix.imag().cwiseAbs();
    for (int pass = 0; pass < passes; ++pass)
    {
        const Scales rowStep = sizes.rowwise().maxCoeff().unaryExpr (&scaleFor);
        const Scales columnStep = sizes.colwise().maxCoeff().transpose().unaryExpr (&scaleFor);
        sizes = rowStep.asDiagonal() * sizes * columnStep.asDiagonal();
        rows = rows.cwiseProduct (rowStep);
        columns = columns.cwiseProduct (columnStep);
    }
    matrix = rows.asDiagonal() * matrix * columns.asDiagonal();
}

} // namespace stopwright
