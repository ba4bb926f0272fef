// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/SampleNetworks.h"

#include "Circuit/NetlistSketch.h"

namespace stopwright
{

namespace
{

OpAmp withBandwidth (double gainBandwidthHz)
{
    OpAmp amplifier;
    amplifier.gainBandwidthHz = gainBandwidthHz;
    amplifier.openLoopDb = 100.0;
    return amplifier;
}

std::vector<SampleNetwork> plainNetworks()
{
    NetlistSketch lowPass, tank, twinT, mixer, ladder, turned;
    lowPass.tap ("in", "a", 10e3).resistor ("R1", "a", "b", 47e3).capacitor ("C1", "b", "0", 22e-9);
    tank.tap ("in", "a").resistor ("R1", "a", "t", 47e3).inductor ("L1", "t", "0", 1.0, 150.0, 120e-12);
    tank.capacitor ("C1", "t", "0", 22e-9).resistor ("R2", "t", "0", 100e3);
    twinT.tap ("in", "a")
        .resistor ("R1", "a", "b", 10e3)
        .resistor ("R2", "b", "o", 10e3)
        .capacitor ("C1", "b", "0", 20e-9);
    twinT.capacitor ("C2", "a", "c", 10e-9).capacitor ("C3", "c", "o", 10e-9).resistor ("R3", "c", "0", 5e3);
    twinT.resistor ("R4", "o", "0", 1e6);
    mixer.tap ("in", "a", 100e3)
        .tap ("in2", "b", 47e3)
        .resistor ("R1", "a", "m", 100e3)
        .resistor ("R2", "b", "m", 68e3);
    mixer.capacitor ("C1", "a", "b", 1e-9).capacitor ("C2", "m", "0", 470e-12).inductor ("L1", "m", "c", 0.6, 90.0);
    mixer.capacitor ("C3", "c", "0", 33e-9);
    ladder.tap ("in", "a", 1e3).capacitor ("C1", "a", "0", 62e-9).inductor ("L1", "a", "b", 0.177);
    ladder.capacitor ("C2", "b", "0", 294e-9).inductor ("L2", "b", "c", 0.312).capacitor ("C3", "c", "0", 264e-9);
    ladder.inductor ("L3", "c", "d", 0.221).capacitor ("C4", "d", "0", 62e-9).resistor ("R1", "d", "0", 1e3);
    turned.tap ("in", "a")
        .potentiometer ("P1", "a", "w", "0", { 100e3, 0.3, Taper::log })
        .contact ("S1", "w", "x", true);
    turned.contact ("S2", "x", "0", false).capacitor ("C1", "x", "o", 47e-9).resistor ("R1", "o", "0", 220e3);
    return {
        { "low-pass", lowPass.output ("b") }, { "tank", tank.output ("t") },     { "twin-T", twinT.output ("o") },
        { "mixer", mixer.output ("c") },      { "ladder", ladder.output ("d") }, { "turned", turned.output ("o") }
    };
}

std::vector<SampleNetwork> degeneratePassiveNetworks()
{
    NetlistSketch loop, divider, star, parallel, island;
    loop.tap ("in", "a", 1e3).capacitor ("C1", "a", "b", 10e-9).capacitor ("C2", "b", "0", 22e-9);
    loop.capacitor ("C3", "a", "0", 4.7e-9).resistor ("R1", "b", "0", 33e3);
    divider.tap ("in", "a")
        .capacitor ("C1", "a", "t", 10e-9)
        .capacitor ("C2", "t", "0", 33e-9)
        .capacitor ("C3", "a", "0", 1e-9);
    divider.resistor ("R1", "t", "0", 47e3).resistor ("R2", "t", "o", 10e3).capacitor ("C4", "o", "0", 2.2e-9);
    star.tap ("in", "a", 600.0).inductor ("L1", "a", "m", 0.1, 5.0).inductor ("L2", "m", "b", 0.3, 9.0);
    star.inductor ("L3", "m", "c", 0.2).resistor ("R1", "b", "0", 1e3).resistor ("R2", "c", "0", 2.2e3);
    star.capacitor ("C1", "c", "0", 100e-9);
    parallel.tap ("in", "a")
        .resistor ("R1", "a", "b", 22e3)
        .capacitor ("C1", "b", "0", 10e-9)
        .capacitor ("C2", "b", "0", 15e-9);
    parallel.inductor ("L1", "b", "0", 0.8, 60.0, 100e-12)
        .inductor ("L2", "b", "c", 0.5)
        .inductor ("L3", "c", "0", 0.7);
    island.tap ("in", "a", 10e3).inductor ("L1", "a", "b", 0.4, 20.0).resistor ("R1", "b", "c", 1e3);
    island.inductor ("L2", "c", "0", 0.5, 30.0).resistor ("R2", "a", "0", 47e3);
    return { { "capacitor loop", loop.output ("b") },
             { "source across capacitors", divider.output ("o") },
             { "coil star", star.output ("c") },
             { "parts in parallel", parallel.output ("c") },
             { "resistor between coils", island.output ("c") } };
}

std::vector<SampleNetwork> activeNetworks()
{
    NetlistSketch integrator, sallenKey, slowSallenKey, gyrator, bandPass, limited;
    integrator.tap ("in", "a").resistor ("R1", "a", "m", 100e3).capacitor ("C1", "m", "o", 10e-9);
    integrator.resistor ("R2", "m", "o", 1e6).opAmp ("U1", "0", "m", "o");
    sallenKey.tap ("in", "a")
        .resistor ("R1", "a", "b", 10e3)
        .resistor ("R2", "b", "p", 10e3)
        .capacitor ("C1", "b", "o", 22e-9);
    sallenKey.capacitor ("C2", "p", "0", 4.7e-9).opAmp ("U1", "p", "o", "o");
    slowSallenKey.tap ("in", "a").capacitor ("C1", "a", "b", 10e-9).capacitor ("C2", "b", "p", 10e-9);
    slowSallenKey.resistor ("R1", "b", "o", 8.2e3).resistor ("R2", "p", "0", 33e3);
    slowSallenKey.opAmp ("U1", "p", "o", "o", withBandwidth (1e6));
    gyrator.tap ("in", "a")
        .resistor ("R1", "a", "t", 22e3)
        .capacitor ("C1", "t", "p", 10e-9)
        .resistor ("R2", "p", "0", 220e3);
    gyrator.resistor ("R3", "t", "o", 470.0).opAmp ("U1", "p", "o", "o").capacitor ("C2", "t", "0", 47e-9);
    bandPass.tap ("in", "a")
        .resistor ("R1", "a", "b", 33e3)
        .resistor ("R3", "b", "0", 1e3)
        .capacitor ("C1", "b", "m", 10e-9);
    bandPass.capacitor ("C2", "b", "o", 10e-9)
        .resistor ("R2", "m", "o", 330e3)
        .opAmp ("U1", "0", "m", "o", withBandwidth (3e6));
    OpAmp finite;
    finite.openLoopDb = 60.0;
    limited.tap ("in", "a")
        .resistor ("R1", "a", "m", 10e3)
        .resistor ("R2", "m", "o", 100e3)
        .capacitor ("C1", "m", "o", 1e-9);
    limited.opAmp ("U1", "0", "m", "o", finite).capacitor ("C2", "o", "x", 1e-6).resistor ("R3", "x", "0", 10e3);
    return { { "integrator", integrator.output ("o") },
             { "Sallen-Key low-pass", sallenKey.output ("o") },
             { "Sallen-Key high-pass", slowSallenKey.output ("o") },
             { "simulated coil", gyrator.output ("t") },
             { "band-pass", bandPass.output ("o") },
             { "limited gain", limited.output ("x") } };
}

std::vector<SampleNetwork> degenerateActiveNetworks()
{
    NetlistSketch converter, driver, bootstrap, earth, forced, pair;
    converter.tap ("in", "a").resistor ("R0", "a", "1", 10e3).capacitor ("C0", "1", "0", 22e-9);
    converter.resistor ("R1", "1", "2", 1e3).resistor ("R2", "2", "3", 1e3).resistor ("R3", "3", "4", 1e3);
    converter.capacitor ("C4", "4", "5", 100e-9).resistor ("R5", "5", "0", 10e3);
    converter.opAmp ("U1", "1", "3", "4").opAmp ("U2", "5", "3", "2");
    driver.tap ("in", "a")
        .resistor ("R1", "a", "p", 47e3)
        .capacitor ("C1", "p", "0", 10e-9)
        .opAmp ("U1", "p", "o", "o");
    driver.capacitor ("C2", "o", "0", 1e-6).resistor ("R2", "o", "x", 1e3).capacitor ("C3", "x", "0", 33e-9);
    bootstrap.tap ("in", "a")
        .capacitor ("C1", "a", "p", 10e-9)
        .resistor ("R1", "p", "b", 100e3)
        .resistor ("R2", "b", "0", 100e3);
    bootstrap.opAmp ("U1", "p", "o", "o").capacitor ("C2", "o", "b", 1e-6).capacitor ("C3", "o", "p", 100e-12);
    earth.tap ("in", "a")
        .resistor ("R1", "a", "m", 10e3)
        .capacitor ("C1", "m", "0", 1e-9)
        .resistor ("R2", "m", "o", 47e3);
    earth.opAmp ("U1", "0", "m", "o").capacitor ("C2", "m", "o", 2.2e-9);
    forced.tap ("in", "a")
        .capacitor ("C1", "a", "m", 10e-9)
        .opAmp ("U1", "0", "m", "o")
        .resistor ("R1", "m", "o", 100e3);
    forced.resistor ("R2", "o", "n", 100e3).opAmp ("U2", "0", "n", "q").capacitor ("C2", "n", "q", 22e-9);
    forced.resistor ("R3", "n", "q", 1e6);
    pair.tap ("in", "a").resistor ("R1", "a", "p", 10e3).opAmp ("U1", "p", "o", "o").capacitor ("C1", "p", "o", 10e-9);
    pair.resistor ("R2", "p", "0", 10e3).resistor ("R3", "o", "x", 1e3).capacitor ("C2", "x", "0", 100e-9);
    return { { "impedance converter", converter.output ("1") },
             { "op-amp drives capacitor", driver.output ("x") },
             { "bootstrap", bootstrap.output ("o") },
             { "capacitor at virtual earth", earth.output ("o") },
             { "differentiator into integrator", forced.output ("q") },
             { "capacitor across follower", pair.output ("x") } };
}

std::string nodeName (int node)
{
    return node == 0 ? "0" : numbered ("n", static_cast<std::size_t> (node));
}

void addRandomPart (NetlistSketch& sketch,
                    Random& random,
                    std::size_t number,
                    const std::string& a,
                    const std::string& b,
                    const std::string& c)
{
    switch (random.integer (0, 5))
    {
        case 0:
        case 1:
            sketch.resistor (numbered ("R", number), a, b, random.logUniform (100.0, 1e6));
            break;
        case 2:
        case 3:
            sketch.capacitor (numbered ("C", number), a, b, random.logUniform (100e-12, 1e-6));
            break;
        case 4:
            sketch.inductor (numbered ("L", number), a, b, random.logUniform (0.01, 5.0), random.uniform (0.0, 200.0),
                             random.chance (0.5) ? random.logUniform (10e-12, 1e-9) : 0.0);
            break;
        default:
            sketch.potentiometer (numbered ("P", number), a, c, b,
                                  { random.logUniform (1e3, 1e6), random.uniform (0.0, 1.0),
                                    random.chance (0.5) ? Taper::linear : Taper::log });
    }
}

void addRandomPassive (NetlistSketch& sketch, Random& random, int nodeCount)
{
    sketch.tap ("in", "n1", random.chance (0.5) ? 0.0 : random.logUniform (10.0, 1e5));
    for (int node = 2; node <= nodeCount; ++node)
        sketch.resistor (numbered ("T", static_cast<std::size_t> (node)), nodeName (node),
                         nodeName (random.integer (0, node - 1)), random.logUniform (1e3, 1e6));
    const int partCount = random.integer (3, 14);
    for (int part = 0; part < partCount; ++part)
    {
        const int a = random.integer (0, nodeCount);
        const int b = (a + random.integer (1, nodeCount)) % (nodeCount + 1);
        int c = random.integer (0, nodeCount);
        while (c == a || c == b)
            c = (c + 1) % (nodeCount + 1);
        addRandomPart (sketch, random, static_cast<std::size_t> (part), nodeName (a), nodeName (b), nodeName (c));
    }
    sketch.resistor ("T1", "n1", "0", 1e5);
}

} // namespace

std::vector<SampleNetwork> sampleNetworks()
{
    std::vector<SampleNetwork> all;
    for (const auto& list :
         { plainNetworks(), degeneratePassiveNetworks(), activeNetworks(), degenerateActiveNetworks() })
        all.insert (all.end(), list.begin(), list.end());
    return all;
}

Netlist largeCard()
{
    NetlistSketch sketch;
    sketch.tap ("in", "n1");
    for (int node = 1; node < 24; ++node)
    {
        const auto number = static_cast<std::size_t> (node);
        sketch.resistor (numbered ("R", number), nodeName (node), nodeName (node + 1), 4.7e3 + 1e3 * node);
        sketch.resistor (numbered ("G", number), nodeName (node + 1), "0", 220e3);
        if (node % 3 == 0)
            sketch.capacitor (numbered ("C", number), nodeName (node + 1), "0", 10e-9 / node);
    }
    sketch.capacitor ("C1", "n2", "n5", 1e-9);
    return sketch.output ("n24");
}

Netlist randomPassiveNetwork (Random& random)
{
    NetlistSketch sketch;
    const int nodeCount = random.integer (3, 8);
    addRandomPassive (sketch, random, nodeCount);
    return sketch.output (nodeName (random.integer (2, nodeCount)));
}

Netlist randomActiveNetwork (Random& random)
{
    NetlistSketch sketch;
    const int nodeCount = random.integer (3, 6);
    addRandomPassive (sketch, random, nodeCount);
    OpAmp amplifier;
    if (random.chance (0.5))
        amplifier.gainBandwidthHz = random.logUniform (1e5, 1e7);
    sketch.opAmp ("U1", nodeName (nodeCount), "f", "f", amplifier)
        .resistor ("RF", "f", "m", random.logUniform (1e3, 1e5));
    sketch.opAmp ("U2", "0", "m", "o").resistor ("RM", "m", "o", random.logUniform (1e3, 1e5));
    if (random.chance (0.5))
        sketch.capacitor ("CM", "m", "o", random.logUniform (1e-10, 1e-7));
    sketch.resistor ("RO", "o", "x", 1e3).capacitor ("CO", "x", "0", random.logUniform (1e-9, 1e-6));
    return sketch.output ("x");
}

} // namespace stopwright
