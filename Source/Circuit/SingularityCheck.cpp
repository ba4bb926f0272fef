// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/SingularityCheck.h"

#include "Circuit/Equilibration.h"
#include "Circuit/FindingWords.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

namespace stopwright
{

namespace
{

using Factors = Eigen::FullPivLU<ExtendedComplexMatrix>;
using Indices = std::vector<int>;

/// Anywhere off the axes will do; these are in mid-audio, where the stores of a voicing network weigh like its resistors.
constexpr std::array<ExtendedComplex, 2> probes { ExtendedComplex (2711.83L, 4919.27L),
                                                  ExtendedComplex (9173.19L, -1637.71L) };

/// Pivots of an equilibrated matrix below this share of the largest are rounding.
constexpr Extended smallestPivot = 1e-16L;

Factors factorise (const ExtendedComplexMatrix& matrix)
{
    Factors factors (matrix);
    factors.setThreshold (smallestPivot);
    return factors;
}

bool isSingularAt (const NodalEquations& equations, ExtendedComplex s)
{
    auto matrix = equations.at (s);
    const Equilibration scales (matrix);
    return ! factorise (matrix).isInvertible();
}

/// Rows of a null space that carry any of its columns noticeably.
Indices carriers (const ExtendedComplexMatrix& nullSpace)
{
    constexpr Extended share = 0.03L;
    Indices indices;
    for (Eigen::Index index = 0; index < nullSpace.rows(); ++index)
        for (Eigen::Index column = 0; column < nullSpace.cols(); ++column)
            if (std::abs (nullSpace (index, column)) > share * nullSpace.col (column).cwiseAbs().maxCoeff())
            {
                indices.push_back (static_cast<int> (index));
                break;
            }
    return indices;
}

/// What the equations leave open: node voltages, branch currents; and the branches whose equations contradict others.
struct Gaps
{
    Indices nodes;
    Indices branches;
};

Gaps findGaps (const NodalEquations& equations)
{
    auto matrix = equations.at (probes.front());
    const Equilibration scales (matrix);
    const ExtendedComplexMatrix undecided = factorise (matrix).kernel();
    const ExtendedComplexMatrix contradictory = factorise (matrix.transpose()).kernel();

    Gaps gaps;
    for (const int index : carriers (undecided))
        (index < equations.nodeCount() ? gaps.nodes : gaps.branches).push_back (index);
    if (! gaps.nodes.empty())
    {
        // Volts are compared with volts, so the scales are taken out again.
        const ExtendedComplexMatrix volts = scales.columns.asDiagonal() * undecided;
        gaps.nodes = carriers (volts.topRows (equations.nodeCount()));
    }
    for (const int index : carriers (contradictory))
        if (index >= equations.nodeCount())
            gaps.branches.push_back (index);
    return gaps;
}

bool contains (const Indices& indices, int index)
{
    return std::find (indices.begin(), indices.end(), index) != indices.end();
}

/// Taps and op-amps that have to do with the gaps, in the netlist's order.
std::vector<std::string> activeNames (const Netlist& netlist, const NodalEquations& equations, const Gaps& gaps)
{
    std::vector<std::string> names;
    const auto ownsGap = [&] (const std::string& name)
    {
        return std::any_of (gaps.branches.begin(), gaps.branches.end(),
                            [&] (int index) { return equations.branchOwner (index) == name; });
    };
    for (const auto& source : netlist.sources)
        if (ownsGap (source.name))
            names.push_back (source.name);
    for (const auto& part : netlist.parts)
        if (std::holds_alternative<OpAmp> (part.value)
            && (ownsGap (part.name) || contains (gaps.nodes, equations.nodes().find (part.nodes[2]))))
            names.push_back (part.name);
    return names;
}

void report (const Netlist& netlist, const NodalEquations& equations, FindingList& findings)
{
    const auto gaps = findGaps (equations);
    const auto active = activeNames (netlist, equations, gaps);
    std::vector<std::string> nodes;
    for (const int node : gaps.nodes)
        nodes.push_back (equations.nodes().nameOf (node));

    auto sentence = nodes.empty() ? std::string ("Nothing decides the currents")
                                  : "Nothing decides the voltage of " + nodesWords (nodes);
    if (active.empty())
        sentence += "; check the parts there for a missing path to common.";
    else
        sentence += "; check how " + partsWords (active) + (active.size() == 1 ? " is" : " are")
                    + " connected, above all the way back to the minus input.";
    const auto subject = active.empty() ? nodes : active;
    findings.addError (subject.empty() ? std::string() : subject.front(), sentence);
}

} // namespace

void checkSingularity (const Netlist& netlist, const NodalEquations& equations, FindingList& findings)
{
    if (equations.size() > 0
        && std::all_of (probes.begin(), probes.end(),
                        [&equations] (ExtendedComplex s) { return isSingularAt (equations, s); }))
        report (netlist, equations, findings);
}

} // namespace stopwright
