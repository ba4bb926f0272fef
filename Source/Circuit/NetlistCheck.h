// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Netlist.h"

#include <string>
#include <vector>

namespace stopwright
{

enum class Severity
{
    error,  ///< the network cannot be computed as drawn
    warning ///< it can, but it is probably not what was meant
};

/// One thing found wrong in a netlist. `sentence` names the part or node and says what to do; `subject` is that
/// part's, source's or node's name, so that a picture can mark it.
struct Finding
{
    Severity severity = Severity::error;
    std::string subject;
    std::string sentence;
};

/// Looks a network over: names, nodes, values, then whether it can be solved (floating nodes, source conflicts,
/// op-amps without feedback, supplies at odds, no resting point, outputs that follow the rate of change of a source, unstable loops).
/// All findings, errors first; empty when the network is sound.
/// Threading: [control]. Fails: never throws for a bad netlist.
std::vector<Finding> findFaults (const Netlist& netlist);

/// Throws Error with the first error's sentence, if there is one. Threading: [control].
void requireSound (const Netlist& netlist);

} // namespace stopwright
