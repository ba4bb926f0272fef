// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Netlist.h"
#include "Support/Random.h"

#include <string>
#include <vector>

namespace stopwright
{

struct SampleNetwork
{
    std::string name;
    Netlist netlist;
};

/// Networks of every kind that a way into state space has to master: plain ones, and those where some capacitor volts or
/// coil amps follow from others. Their source is "in" (some have "in2" besides).
std::vector<SampleNetwork> sampleNetworks();

/// A ladder of 24 nodes with eight capacitors, the size of a large card.
Netlist largeCard();

/// A passive network with every node tied to common through resistors somewhere: resistors, capacitors, coils,
/// potentiometers and switches between random nodes, and one source, "in".
Netlist randomPassiveNetwork (Random& random);

/// The same with followers, inverters and integrators with bleeders behind it, all stable whatever the values.
Netlist randomActiveNetwork (Random& random);

} // namespace stopwright
