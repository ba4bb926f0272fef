// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/RestingNetwork.h"

#include "Circuit/Equilibration.h"
#include "Circuit/FindingWords.h"
#include "Circuit/NodeIslands.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr int mostSteps = 100;

/// Pivots of an equilibrated matrix below this share of the largest are rounding.
constexpr Extended smallestPivot = 1e-17L;

Extended between (const ExtendedMatrix& unknowns, const NodalEquations::JunctionEnds& ends, Eigen::Index column)
{
    const auto at = [&] (int node) { return node < 0 ? 0.0L : unknowns (node, column); };
    return at (ends.from) - at (ends.to);
}

/// The node or part that carries most of what is not determined.
std::string ownerOfGap (const NodalEquations& equations, const Eigen::FullPivLU<ExtendedMatrix>& factors)
{
    Eigen::Index row = 0;
    Eigen::Index column = 0;
    factors.kernel().cwiseAbs().maxCoeff (&row, &column);
    const int index = static_cast<int> (row);
    return index < equations.nodeCount() ? nodeWords (equations.nodes().nameOf (index))
                                         : partWords (equations.branchOwner (index));
}

} // namespace

RestingNetwork::RestingNetwork (const Netlist& netlist) : equations_ (netlist), solver_ (JunctionBank (netlist))
{
    reduce (netlist);
}

void RestingNetwork::reduce (const Netlist& netlist)
{
    auto matrix = equations_.at (0.0L);
    for (const auto& island : nodeIslands (netlist, equations_.nodes(), PathKind::direct))
        matrix (island.front(), island.front()) += static_cast<Extended> (JunctionLaw::leastSiemens);
    const Equilibration scales (matrix);
    Eigen::FullPivLU<ExtendedMatrix> factors (matrix.real());
    factors.setThreshold (smallestPivot);
    if (! factors.isInvertible())
    {
        undecided_ = ownerOfGap (equations_, factors);
        return;
    }

    const auto solve = [&] (const ExtendedMatrix& right) -> ExtendedMatrix
    { return scales.columns.asDiagonal() * factors.solve (scales.rows.asDiagonal() * right); };
    const auto& junctions = equations_.junctions();
    const auto count = static_cast<Eigen::Index> (junctions.size());
    ExtendedMatrix drawn = ExtendedMatrix::Zero (equations_.size(), count);
    for (Eigen::Index column = 0; column < count; ++column)
    {
        const auto& ends = junctions[static_cast<std::size_t> (column)];
        if (ends.from >= 0)
            drawn (ends.from, column) -= 1.0L;
        if (ends.to >= 0)
            drawn (ends.to, column) += 1.0L;
    }
    fromSupplies_ = solve (equations_.supplyExcitation());
    fromJunctions_ = solve (drawn);

    ports_ = solver_.makePorts();
    for (Eigen::Index row = 0; row < count; ++row)
    {
        const auto& ends = junctions[static_cast<std::size_t> (row)];
        open_.push_back (static_cast<double> (between (fromSupplies_, ends, 0)));
        for (Eigen::Index column = 0; column < count; ++column)
            ports_.impedance (row, column) = static_cast<double> (between (fromJunctions_, ends, column));
    }
    solver_.placeKnees (ports_);
    scaled_ = open_;
}

bool RestingNetwork::tryAt (double supplyShare, double shuntSiemens)
{
    std::transform (open_.begin(), open_.end(), scaled_.begin(), [=] (double volts) { return supplyShare * volts; });
    const std::vector<double> from (solver_.volts().begin(), solver_.volts().end());
    if (solver_.solve (scaled_.data(), ports_, mostSteps, shuntSiemens))
        return true;
    solver_.start (from);
    return false;
}

bool RestingNetwork::settle()
{
    const std::vector<double> fromZero (open_.size(), 0.0);
    const auto startAfresh = [&] { solver_.start (fromZero); };
    startAfresh();
    bool isSettled = tryAt (1.0, 0.0);
    if (! isSettled)
    {
        startAfresh();
        isSettled = settleByShunt();
    }
    if (! isSettled)
    {
        startAfresh();
        isSettled = settleBySupply();
    }
    // Once more from there, so that the slopes are those at the very point.
    return isSettled && tryAt (1.0, 0.0);
}

bool RestingNetwork::settleByShunt()
{
    constexpr double first = 1.0;
    constexpr double last = 1e-12;
    for (double siemens = first; siemens > last; siemens *= 0.3)
        if (! tryAt (1.0, siemens))
            return false;
    return tryAt (1.0, 0.0);
}

bool RestingNetwork::settleBySupply()
{
    constexpr double smallest = 1e-5;
    double reached = 0.0;
    double step = 0.1;
    while (reached < 1.0)
    {
        const double share = std::min (1.0, reached + step);
        if (tryAt (share, 0.0))
        {
            reached = share;
            step *= 2.0;
        }
        else if ((step *= 0.25) < smallest)
            return false;
    }
    return true;
}

double RestingNetwork::unknown (int index) const
{
    Extended sum = fromSupplies_ (index, 0);
    for (Eigen::Index column = 0; column < fromJunctions_.cols(); ++column)
        sum += fromJunctions_ (index, column)
               * static_cast<Extended> (solver_.excessAmps()[static_cast<std::size_t> (column)]);
    return static_cast<double> (sum);
}

} // namespace stopwright
