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

Card cardOf (std::vector<Tap> taps, std::vector<Part> parts, std::string output)
{
    Card card;
    card.taps = std::move (taps);
    card.parts = std::move (parts);
    card.output = std::move (output);
    return card;
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
    return cardOf ({ sampleTap ("W1", kind) },
                   { { "R1", { "in", "t" }, Resistor { 47e3 }, 0.0 },
                     { "L1", { "t", "0" }, Inductor { 1.0, 150.0, 0.0 }, 0.0 },
                     { "C1", { "t", "0" }, Capacitor { 22e-9 }, 0.0 },
                     { "R2", { "t", "0" }, Resistor { 100e3 }, 0.0 } },
                   "t");
}

Card threeSectionCard()
{
    std::vector<Part> parts;
    const std::vector<std::string> nodes { "in", "a", "b", "c" };
    for (std::size_t i = 1; i < nodes.size(); ++i)
    {
        parts.push_back ({ numbered ("R", i), { nodes[i - 1], nodes[i] }, Resistor { 47e3 }, 0.0 });
        parts.push_back ({ numbered ("C", i), { nodes[i], "0" }, Capacitor { 10e-9 }, 0.0 });
    }
    return cardOf ({ sampleTap ("W1", WaveKind::square) }, std::move (parts), nodes.back());
}

Card straightCard (std::vector<Tap> taps)
{
    std::vector<Part> parts;
    for (std::size_t i = 0; i < taps.size(); ++i)
    {
        taps[i].node = numbered ("in", i);
        parts.push_back ({ numbered ("R", i), { taps[i].node, "out" }, Resistor { 10e3 }, 0.0 });
    }
    return cardOf (std::move (taps), std::move (parts), "out");
}

KeySource keysUpToC9()
{
    Instrument organ;
    organ.divisions = { { "Manual", 36, 96, {} } };
    return keySourceOf (organ, "Manual", Card());
}

} // namespace stopwright
