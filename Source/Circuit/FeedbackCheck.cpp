// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FeedbackCheck.h"

#include "Circuit/FeedbackPaths.h"
#include "Circuit/FindingWords.h"
#include "Units/Engineering.h"

namespace stopwright
{

namespace
{

bool hasInputsOnOneNode (const Part& part, const NodeMap& nodes)
{
    return nodes.find (part.nodes[0]) == nodes.find (part.nodes[1]);
}

void reportOpenLoop (const Part& part, const OpAmp& amplifier, FindingList& findings)
{
    const auto start = partWords (part.name) + " has no path from its output back to its inputs, so ";
    if (amplifier.openLoopDb)
        findings.addWarning (part.name, start + "it works at its full open-loop gain of "
                                            + formatForReading (*amplifier.openLoopDb, Quantity::number)
                                            + " dB; connect a feedback part to its minus input if that is not meant.");
    else
        findings.addError (
            part.name,
            start + "any signal drives it to a rail; connect a feedback part from its output to its minus input.");
}

} // namespace

void checkFeedback (const Netlist& netlist, const NodeMap& nodes, FindingList& findings)
{
    const FeedbackPaths anyPath (netlist, nodes, PathKind::any);
    const FeedbackPaths directPath (netlist, nodes, PathKind::direct);
    for (const auto& part : netlist.parts)
    {
        const auto* amplifier = std::get_if<OpAmp> (&part.value);
        if (amplifier == nullptr || hasInputsOnOneNode (part, nodes))
            continue;
        if (! anyPath.reachesMinus (part) && ! anyPath.reachesPlus (part))
            reportOpenLoop (part, *amplifier, findings);
        else if (! directPath.reachesMinus (part) && ! directPath.reachesPlus (part))
            findings.addWarning (
                part.name, partWords (part.name)
                               + " has no feedback at 0 Hz, so a real one drifts to a rail;"
                                 " put a large resistor across the capacitor from its output to its minus input.");
    }
}

} // namespace stopwright
