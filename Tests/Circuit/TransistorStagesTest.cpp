// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/DeviceNetworks.h"
#include "Circuit/JunctionLaw.h"
#include "Circuit/OperatingPoint.h"
#include "Circuit/SmallSignal.h"

#include <cmath>
#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

constexpr double thermal = JunctionLaw::thermalVolts;
constexpr double beta = 200.0;

/// leastSiemens and Is are 1e-9 of what flows in these stages.
constexpr double hand = 1e-6;

double parallel (double a, double b)
{
    return a * b / (a + b);
}

double collectorAmps (const Netlist& netlist)
{
    const auto point = findOperatingPoint (netlist);
    for (const auto& device : point.devices)
        if (device.part == "Q1")
            return device.leadAmps[0];
    return 0.0;
}

/// Infinite capacitors, so that only the resistances are left at 1 kHz.
Netlist withLargeCapacitors (Netlist netlist)
{
    for (auto& part : netlist.parts)
        if (auto* capacitor = std::get_if<Capacitor> (&part.value))
            capacitor->farads = 1.0;
    return netlist;
}

} // namespace

// Hybrid-pi model, closed form (Gray, Meyer, "Analysis and design of analog integrated circuits"; from memory):
// A = (b + 1) R / (r_pi + (b + 1) R), r_pi = b Vt / Ic, R = RE || RL.
TEST (TransistorStages, FollowerHasTheGainOfTheHandFormula)
{
    const auto netlist = withLargeCapacitors (emitterFollower (1e-6).output ("out"));
    const double amps = collectorAmps (netlist);
    EXPECT_NEAR (amps * 201.0 / 200.0, 0.7e-3, 1e-9);
    const double input = beta * thermal / amps;
    const double load = (beta + 1.0) * parallel (10e3, 4.7e3);
    EXPECT_NEAR (SmallSignal (netlist).response ("W1", "out", 1000.0).real(), load / (input + load), hand);
}

// The same model seen from the emitter: (r_pi + Rs) / (b + 1), in parallel with RE and RL: "Vt / Ic + Rs / beta".
TEST (TransistorStages, FollowerHasTheOutputResistanceOfTheHandFormula)
{
    auto netlist = withLargeCapacitors (emitterFollower (1e-6).output ("out"));
    netlist.sources.front().sourceOhms = 47e3;
    const double amps = collectorAmps (netlist);
    const double emitterOhms = (beta * thermal / amps + 47e3) / (beta + 1.0);
    EXPECT_NEAR (SmallSignal (netlist).impedance ("out", 1000.0).real(), parallel (emitterOhms, parallel (10e3, 4.7e3)),
                 hand * emitterOhms);
}

// A = -b (RC || RL) / (r_pi + (b + 1) RE); with the emitter bypassed -gm (RC || RL), gm = Ic / Vt.
TEST (TransistorStages, CommonEmitterStageHasTheGainOfTheHandFormula)
{
    const auto netlist = withLargeCapacitors (commonEmitter (silicon()).output ("out"));
    const double amps = collectorAmps (netlist);
    const double load = parallel (10e3, 100e3);
    const double gain = -beta * load / (beta * thermal / amps + (beta + 1.0) * 2.2e3);
    EXPECT_NEAR (SmallSignal (netlist).response ("W1", "out", 1000.0).real(), gain, -hand * gain);

    auto bypassed = netlist;
    bypassed.parts.push_back ({ "CE", { "e", "0" }, Capacitor { 1.0 }, 0.0 });
    const double full = -amps / thermal * load;
    EXPECT_NEAR (SmallSignal (bypassed).response ("W1", "out", 1000.0).real(), full, -1e-5 * full);
}

// With an Early voltage the collector has ro = (VA + vcb) / Ic' across it, where Ic' / (1 + vcb / VA) is the current
// without: gm ro stays VA-like. Closed form of the hybrid-pi model.
TEST (TransistorStages, EarlyVoltageLoadsTheCollector)
{
    auto netlist = withLargeCapacitors (commonEmitter (silicon (60.0)).output ("out"));
    netlist.parts.push_back ({ "CE", { "e", "0" }, Capacitor { 1.0 }, 0.0 });
    const auto point = findOperatingPoint (netlist);
    const double amps = collectorAmps (netlist);
    const double collectorOhms = (60.0 + point.voltsAt ("c") - point.voltsAt ("b")) / amps;
    const double load = parallel (collectorOhms, parallel (10e3, 100e3));
    // The current that the collector's volts drive comes back through the base in this model, hence the small share more.
    const double full = -amps / thermal * load;
    EXPECT_NEAR (SmallSignal (netlist).response ("W1", "out", 1000.0).real(), full, -2e-3 * full);
}

// Closed form: a biased diode is n Vt / I to small signals.
TEST (TransistorStages, ABiasedDiodeIsAResistance)
{
    const auto netlist = NetlistSketch()
                             .tap ("W1", "in")
                             .part ("V1", { "+", "0" }, Supply { 10.0, 0.0 })
                             .resistor ("R1", "+", "d", 10e3)
                             .capacitor ("C1", "in", "x", 1.0)
                             .resistor ("R2", "x", "d", 1e3)
                             .part ("D1", { "d", "0" }, signalDiode())
                             .output ("d");
    const auto point = findOperatingPoint (netlist);
    const double amps = (10.0 - point.voltsAt ("d")) / 10e3;
    const double diode = parallel (45.3e-3 / (amps + 2.52e-9), 10e3);
    EXPECT_NEAR (SmallSignal (netlist).response ("W1", "d", 1000.0).real(), diode / (1e3 + diode), 1e-9);
}

} // namespace stopwright
