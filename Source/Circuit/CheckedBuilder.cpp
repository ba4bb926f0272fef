// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/CheckedBuilder.h"

#include "Circuit/CircuitLimits.h"
#include "Circuit/NetlistCheck.h"
#include "Circuit/NetworkFault.h"
#include "Circuit/NodeMap.h"
#include "Units/Error.h"

#include <cmath>

namespace stopwright
{

namespace
{

void requireOutputs (const Netlist& netlist, const std::vector<std::string>& outputNodes)
{
    if (outputNodes.size() > static_cast<std::size_t> (CircuitLimits::outputs))
        throw Error ("At most " + std::to_string (CircuitLimits::outputs) + " nodes can be listened to at once, not "
                     + std::to_string (outputNodes.size()) + "; leave some out.");
    const NodeMap nodes (netlist);
    for (const auto& name : outputNodes)
        if (nodes.find (name) == NodeMap::unknown)
            throw Error ("There is no node '" + name
                         + "' in the network to listen to; name a node that a part touches.");
}

} // namespace

void requireRunnable (const Netlist& netlist, const std::vector<std::string>& outputNodes, double sampleRateHz)
{
    if (! (sampleRateHz > 0.0) || ! std::isfinite (sampleRateHz))
        throw Error ("A sample rate of " + std::to_string (sampleRateHz) + " Hz cannot be used; give a positive one.");
    requireSound (netlist);
    requireOutputs (netlist, outputNodes);
}

StateSpaceBuilder
    checkedBuilder (const Netlist& netlist, const std::vector<std::string>& outputNodes, double sampleRateHz)
{
    requireRunnable (netlist, outputNodes, sampleRateHz);
    StateSpaceBuilder builder (netlist, outputNodes);
    if (builder.fault())
        throw Error (sentenceFor (builder.fault()));
    return builder;
}

} // namespace stopwright
