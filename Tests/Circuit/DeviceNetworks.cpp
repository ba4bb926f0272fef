// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/DeviceNetworks.h"

#include "Circuit/JunctionLaw.h"

#include <cmath>

namespace stopwright
{

namespace
{

PartValue randomDevice (Random& random)
{
    Transistor transistor {
        random.logUniform (1e-16, 1e-6), random.logUniform (5.0, 500.0), random.logUniform (0.1, 10.0), 0.0, {}
    };
    if (random.chance (0.3))
        transistor.leakageAmps = random.logUniform (1e-9, 1e-5);
    if (random.chance (0.3))
        transistor.earlyVolts = random.uniform (20.0, 200.0);
    switch (random.integer (0, 2))
    {
        case 0:
            return Npn { transistor };
        case 1:
            return Pnp { transistor };
        default:
            return Diode { random.logUniform (1e-15, 1e-6), random.uniform (1.0, 2.0),
                           random.chance (0.5) ? random.logUniform (0.1, 100.0) : 0.0 };
    }
}

PartValue randomPart (Random& random)
{
    switch (random.integer (0, 5))
    {
        case 0:
        case 1:
            return Resistor { random.logUniform (100.0, 1e6) };
        case 2:
            return Capacitor { random.logUniform (1e-10, 1e-5) };
        case 3:
            return Supply { random.uniform (-20.0, 20.0), random.logUniform (1.0, 1e3) };
        default:
            return randomDevice (random);
    }
}

} // namespace

Diode signalDiode()
{
    return { 2.52e-9, 45.3e-3 / JunctionLaw::thermalVolts, 0.0 };
}

Transistor silicon (std::optional<double> earlyVolts)
{
    return { 1e-14, 200.0, 2.0, 0.0, earlyVolts };
}

Transistor germanium (double leakageAmps)
{
    return { 1e-6, 60.0, 20.0, leakageAmps, {} };
}

NetlistSketch clipper (double ohms, double farads)
{
    return NetlistSketch()
        .tap ("W1", "in")
        .resistor ("R1", "in", "out", ohms)
        .capacitor ("C1", "out", "0", farads)
        .part ("D1", { "out", "0" }, signalDiode())
        .part ("D2", { "0", "out" }, signalDiode());
}

NetlistSketch emitterFollower (double couplingFarads)
{
    const double emitterAmps = 0.7e-3;
    const double baseEmitterVolts = JunctionLaw::thermalVolts * std::log (emitterAmps * 200.0 / 201.0 / 1e-14);
    return NetlistSketch()
        .tap ("W1", "in")
        .part ("V1", { "+", "0" }, Supply { 15.0, 0.0 })
        .part ("V2", { "0", "-" }, Supply { baseEmitterVolts + emitterAmps * 10e3, 0.0 })
        .part ("Q1", { "+", "in", "e" }, Npn { silicon() })
        .resistor ("RE", "e", "-", 10e3)
        .capacitor ("C2", "e", "out", couplingFarads)
        .resistor ("RL", "out", "0", 4.7e3);
}

NetlistSketch commonEmitter (const Transistor& transistor)
{
    return NetlistSketch()
        .tap ("W1", "in")
        .part ("V1", { "+", "0" }, Supply { 15.0, 0.0 })
        .capacitor ("C1", "in", "b", 1e-6)
        .resistor ("R1", "+", "b", 100e3)
        .resistor ("R2", "b", "0", 22e3)
        .part ("Q1", { "c", "b", "e" }, Npn { transistor })
        .resistor ("RC", "+", "c", 10e3)
        .resistor ("RE", "e", "0", 2.2e3)
        .capacitor ("C2", "c", "out", 0.1e-6)
        .resistor ("RL", "out", "0", 100e3);
}

Netlist randomDeviceNetwork (Random& random)
{
    const int nodeCount = random.integer (2, 6);
    const auto anyNode = [&]
    {
        const int node = random.integer (-1, nodeCount - 1);
        return node < 0 ? std::string ("0") : numbered ("n", static_cast<std::size_t> (node));
    };
    NetlistSketch sketch;
    sketch.tap ("W1", "n0", random.chance (0.5) ? 0.0 : random.logUniform (10.0, 1e5));
    for (int node = 0; node < nodeCount; ++node)
    {
        const auto name = numbered ("n", static_cast<std::size_t> (node));
        sketch.resistor (numbered ("G", static_cast<std::size_t> (node)), name, "0", random.logUniform (1e3, 1e7));
    }
    const int partCount = random.integer (3, 10);
    for (int part = 0; part < partCount; ++part)
    {
        const auto value = randomPart (random);
        std::vector<std::string> nodes { anyNode() };
        while (nodes.size() < leadCount (value))
            nodes.push_back (anyNode());
        sketch.part (numbered ("X", static_cast<std::size_t> (part)), nodes, value);
    }
    return sketch.output (numbered ("n", static_cast<std::size_t> (nodeCount - 1)));
}

int DeviceRun::knob (const std::string& part, KnobKind kind) const
{
    return circuit.findKnob ({ part, kind }).value();
}

std::vector<double> DeviceRun::run (const std::vector<double>& input)
{
    std::vector<double> output (input.size());
    const double* from[] = { input.data() };
    double* to[] = { output.data() };
    circuit.process (from, to, static_cast<int> (input.size()));
    return output;
}

double DeviceRun::step (double input)
{
    return run ({ input }).front();
}

} // namespace stopwright
