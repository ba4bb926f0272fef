// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Equilibration.h"
#include "Circuit/NodalEquations.h"

#include <Eigen/Dense>

namespace stopwright
{

/// The nodal equations factored at one complex frequency.
///
/// The factors of the equilibrated matrix are in double; every solution is refined with residuals in extended
/// precision until it stands still, so that it is good to double rounding.
/// Threading: [control]. Needs equations that have a solution at s (at least one unknown).
/// Source: Higham, "Accuracy and Stability of Numerical Algorithms", 2nd ed. 2002, ch. 12 (refinement).
class NodalSolver
{
public:
    NodalSolver (const NodalEquations& equations, ExtendedComplex s);

    /// z of (G + s E) z = rightSides, for every column.
    ExtendedComplexMatrix solve (const ExtendedComplexMatrix& rightSides) const;

private:
    ExtendedComplexMatrix matrix_;
    Equilibration scales_;
    Eigen::PartialPivLU<Eigen::MatrixXcd> factors_;
};

} // namespace stopwright
