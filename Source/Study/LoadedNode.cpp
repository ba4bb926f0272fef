// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/LoadedNode.h"

#include "Circuit/NetlistCheck.h"
#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <set>
#include <utility>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

constexpr double probeOhms = 10e3; ///< of about the size of the network's, so that no digits are lost

std::string checkedNode (const Card& card, std::string node)
{
    if (node.empty())
        return card.output;
    std::set<std::string> nodes { card.output };
    for (const Tap& tap : card.taps)
        nodes.insert (tap.node);
    for (const Part& part : card.parts)
        nodes.insert (part.nodes.begin(), part.nodes.end());
    nodes.erase (std::string (commonNode));
    if (nodes.contains (node))
        return node;
    std::string names;
    for (const auto& name : nodes)
        names += (names.empty() ? "" : ", ") + quotedText (name);
    throw Error ("There is no node " + quotedText (node) + " to measure at on this card; it has: " + names + ".");
}

void addProbe (Netlist& netlist, const std::string& node)
{
    std::string name = "probe";
    const auto isTaken = [&name] (const auto& item) { return item.name == name; };
    while (std::ranges::any_of (netlist.parts, isTaken) || std::ranges::any_of (netlist.sources, isTaken))
        name += "'";
    netlist.sources.push_back ({ name, node, probeOhms });
}

/// The network must be sound without the probes.
Netlist withProbes (const Card& card, const std::string& node)
{
    Netlist netlist = netlistOf (card);
    requireSound (netlist);
    addProbe (netlist, card.output);
    addProbe (netlist, node);
    return netlist;
}

} // namespace

LoadedNode::LoadedNode (const Card& card, std::string node, Admittance load)
    : node_ (checkedNode (card, std::move (node))),
      load_ (std::move (load)),
      toNode_ (withProbes (card, node_), node_),
      toOutput_ (withProbes (card, node_), card.output)
{}

// n and o are the node's and the output's volts. The output's probe has to carry what the load would: its volts are
// k o with k = 1 - R Y. The node's carries nothing, or one ampere: its volts are n + R j.
NodeEquivalent LoadedNode::at (double frequencyHz) const
{
    const auto toNode = toNode_.at (frequencyHz);
    const auto toOutput = toOutput_.at (frequencyHz);
    const auto taps = toNode.size() - 2;
    const Complex k = load_ ? 1.0 - probeOhms * load_ (frequencyHz) : Complex (1.0);
    const Complex nn = 1.0 - toNode[taps + 1];
    const Complex no = -k * toNode[taps];
    const Complex on = -toOutput[taps + 1];
    const Complex oo = 1.0 - k * toOutput[taps];
    const Complex determinant = nn * oo - no * on;
    const auto solve = [&] (Complex intoNode, Complex intoOutput)
    { return (intoNode * oo - no * intoOutput) / determinant; };

    NodeEquivalent equivalent;
    for (std::size_t tap = 0; tap < taps; ++tap)
        equivalent.tapGains.push_back (solve (toNode[tap], toOutput[tap]));
    equivalent.ohms = solve (probeOhms * toNode[taps + 1], probeOhms * toOutput[taps + 1]);
    return equivalent;
}

} // namespace stopwright
