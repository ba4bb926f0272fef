// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NetlistCheck.h"

#include "Circuit/ConnectionCheck.h"
#include "Circuit/DeviceCheck.h"
#include "Circuit/FeedbackCheck.h"
#include "Circuit/FindingList.h"
#include "Circuit/NameCheck.h"
#include "Circuit/NetworkFault.h"
#include "Circuit/NodalEquations.h"
#include "Circuit/OperatingPoint.h"
#include "Circuit/ResponseCheck.h"
#include "Circuit/SingularityCheck.h"
#include "Circuit/StabilityCheck.h"
#include "Circuit/StateSpaceBuilder.h"
#include "Circuit/ValueCheck.h"
#include "Circuit/VoltageConflictCheck.h"
#include "Units/Error.h"

#include <utility>

namespace stopwright
{

namespace
{

/// What shows only when the equations are solved. Each step needs those before it to be free of errors.
void checkSolution (const Netlist& netlist, FindingList& findings)
{
    checkSingularity (netlist, NodalEquations (netlist), findings);
    if (findings.hasErrors())
        return;
    const auto resting = searchOperatingPoint (netlist);
    if (! resting.point)
        return findings.addError (resting.subject, resting.sentence);

    // From here on the devices are what they are for small signals.
    const NodalEquations equations (netlist, resting.point->slopes);
    checkStability (netlist, equations, findings);
    checkResponses (netlist, equations, findings);
    if (findings.hasErrors())
        return;

    // The way into state space has bounds of its own: rates of change of rates of change.
    const StateSpaceBuilder builder (netlist, { netlist.output });
    if (const auto& fault = builder.fault())
        findings.addError (fault.subject, sentenceFor (fault));
}

} // namespace

std::vector<Finding> findFaults (const Netlist& netlist)
{
    FindingList findings;
    checkNames (netlist, findings);
    const bool isReadable = ! findings.hasErrors();
    checkValues (netlist, findings);
    if (isReadable)
    {
        const NodeMap nodes (netlist);
        checkConnections (netlist, nodes, findings);
        checkVoltageConflicts (netlist, nodes, findings);
        checkFeedback (netlist, nodes, findings);
        checkDevices (netlist, nodes, findings);
    }
    if (! findings.hasErrors())
        checkSolution (netlist, findings);
    return std::move (findings).take();
}

void requireSound (const Netlist& netlist)
{
    const auto findings = findFaults (netlist);
    if (! findings.empty() && findings.front().severity == Severity::error)
        throw Error (findings.front().sentence);
}

} // namespace stopwright
