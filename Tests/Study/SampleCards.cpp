// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/SampleCards.h"

#include "Organ/Instrument.h"

namespace stopwright
{

namespace
{

std::string numbered (const char* letters, std::size_t number)
{
    return std::string (letters).append (std::to_string (number));
}

} // namespace

Tap sampleTap (const std::string& name, WaveKind kind, const std::string& footage)
{
    Tap tap;
    tap.name = name;
    tap.wave.kind = kind;
    tap.footage = Footage::parse (footage);
    tap.voltsPeakToPeak = 2.0;
    tap.node = "in";
    return tap;
}

Card shuntTankCard (WaveKind kind)
{
    Card card;
    card.taps = { sampleTap ("W1", kind) };
    card.parts = { { "R1", { "in", "t" }, Resistor { 47e3 }, 0.0 },
                   { "L1", { "t", "0" }, Inductor { 1.0, 150.0, 0.0 }, 0.0 },
                   { "C1", { "t", "0" }, Capacitor { 22e-9 }, 0.0 },
                   { "R2", { "t", "0" }, Resistor { 100e3 }, 0.0 } };
    card.output = "t";
    return card;
}

Card threeSectionCard()
{
    Card card;
    card.taps = { sampleTap ("W1", WaveKind::square) };
    const std::vector<std::string> nodes { "in", "a", "b", "c" };
    for (std::size_t i = 1; i < nodes.size(); ++i)
    {
        card.parts.push_back ({ numbered ("R", i), { nodes[i - 1], nodes[i] }, Resistor { 47e3 }, 0.0 });
        card.parts.push_back ({ numbered ("C", i), { nodes[i], "0" }, Capacitor { 10e-9 }, 0.0 });
    }
    card.output = "c";
    return card;
}

Card straightCard (std::vector<Tap> taps)
{
    Card card;
    for (std::size_t i = 0; i < taps.size(); ++i)
    {
        taps[i].node = numbered ("in", i);
        card.parts.push_back ({ numbered ("R", i), { taps[i].node, "out" }, Resistor { 10e3 }, 0.0 });
    }
    card.taps = std::move (taps);
    card.output = "out";
    return card;
}

KeySource keysUpToC9()
{
    Instrument organ;
    organ.divisions = { { "Manual", 36, 96 } };
    return keySourceOf (organ, "Manual", Card());
}

} // namespace stopwright
