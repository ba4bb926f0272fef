// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/NetlistSketch.h"
#include "Circuit/NonlinearCircuit.h"
#include "Support/Random.h"

#include <vector>

namespace stopwright
{

/// Saturation current and emission coefficient of a common small-signal diode: n Vt = 45.3 mV at 300 K (published
/// SPICE models of the 1N4148 type: IS = 2.52 nA, N = 1.752).
Diode signalDiode();

/// A silicon transistor of gain 200, Is = 10 fA, without Early effect unless given.
Transistor silicon (std::optional<double> earlyVolts = {});

/// A germanium-like one of gain 60: Is = 1 uA, and this much leakage from collector to base.
Transistor germanium (double leakageAmps);

/// Tap, R in series, and two diodes back to back with C across them: output "out".
NetlistSketch clipper (double ohms, double farads);

/// Base at the tap's node "in", emitter "e", RE = 10 k to a negative supply that makes 0.7 mA, C2 to "out" with a load
/// of 4.7 k.
NetlistSketch emitterFollower (double couplingFarads);

/// 15 V, divider 100 k / 22 k on the base (coupled by C1), RC = 10 k, RE = 2.2 k: collector "c", emitter "e", and C2 to
/// "out" with 100 k.
NetlistSketch commonEmitter (const Transistor& transistor);

/// Parts of every kind thrown together on a few nodes, each with a resistor to common; often sound, never certain to be.
Netlist randomDeviceNetwork (Random& random);

/// A circuit with one tap, fed sample by sample or all at once.
class DeviceRun
{
public:
    DeviceRun (const Netlist& netlist, double sampleRateHz) : circuit (netlist, { netlist.output }, sampleRateHz) {}

    NonlinearCircuit circuit;

    int knob (const std::string& part, KnobKind kind = KnobKind::value) const;
    std::vector<double> run (const std::vector<double>& input);
    double step (double input);
};

} // namespace stopwright
