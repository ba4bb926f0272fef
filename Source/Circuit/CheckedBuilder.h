// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Netlist.h"
#include "Circuit/StateSpaceBuilder.h"

#include <string>
#include <vector>

namespace stopwright
{

/// What a network must be before it can run in time: sound, with at most CircuitLimits::outputs output nodes, which
/// exist, and at a positive rate. Threading: [control]. Fails: Error with a sentence.
void requireRunnable (const Netlist& netlist, const std::vector<std::string>& outputNodes, double sampleRateHz);

/// The builder of a network that is to run in time: sound, not too large, with output nodes that exist.
/// Threading: [control]. Fails: Error with a sentence.
StateSpaceBuilder
    checkedBuilder (const Netlist& netlist, const std::vector<std::string>& outputNodes, double sampleRateHz);

} // namespace stopwright
