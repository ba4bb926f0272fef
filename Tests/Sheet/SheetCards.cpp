// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SheetCards.h"

#include <utility>

namespace stopwright
{

namespace
{

/// Nothing but one keyed wave at n0.
Card cardWithATap()
{
    Card card;
    Tap tap;
    tap.name = "Square 8";
    tap.node = "n0";
    card.taps.push_back (tap);
    return card;
}

PartValue randomValue (Random& random)
{
    switch (random.integer (0, 13))
    {
        case 0:
        case 1:
        case 2:
            return Resistor { random.logUniform (1.0, 1e7) };
        case 3:
        case 4:
            return Capacitor { random.logUniform (1e-12, 1e-5) };
        case 5:
        case 6:
            return Inductor { random.logUniform (1e-3, 20.0), random.uniform (0.0, 900.0), 0.0 };
        case 7:
            return Potentiometer { random.logUniform (1e3, 1e6), random.uniform (0.0, 1.0), Taper::log };
        case 8:
            return Switch { random.chance (0.5) };
        case 9:
            return OpAmp {};
        case 10:
            return Diode { 1e-9, 1.5, random.chance (0.5) ? 12.0 : 0.0 };
        case 11:
            return Npn { { 1e-14, 200.0, 2.0, 0.0, {} } };
        case 12:
            return Pnp { { 1e-14, 200.0, 2.0, 0.0, {} } };
        default:
            return Supply { random.uniform (-20.0, 20.0), 0.0 };
    }
}

std::string numbered (const std::string& letter, int number)
{
    return std::string (letter).append (std::to_string (number));
}

std::string randomNode (Random& random, int nodeCount)
{
    if (random.chance (0.2))
        return "0";
    if (random.chance (0.02))
        return "";
    return numbered ("n", random.integer (1, nodeCount));
}

} // namespace

Card cardOf (const Netlist& netlist)
{
    Card card;
    card.parts = netlist.parts;
    card.output = netlist.output;
    for (const auto& source : netlist.sources)
    {
        Tap tap;
        tap.name = source.name;
        tap.node = source.node;
        tap.sourceOhms = source.sourceOhms;
        card.taps.push_back (std::move (tap));
    }
    return card;
}

Card randomUnfinishedCard (Random& random, int partCount)
{
    Card card;
    const int nodeCount = random.integer (1, partCount + 2);
    const int tapCount = random.integer (0, 4);
    for (int tap = 0; tap < tapCount; ++tap)
    {
        Tap made;
        made.name = random.chance (0.1) ? "A tap whose name is rather long" : numbered ("T", tap);
        made.wave.kind = static_cast<WaveKind> (random.integer (0, 6));
        made.node = randomNode (random, nodeCount);
        card.taps.push_back (std::move (made));
    }
    for (int part = 0; part < partCount; ++part)
    {
        Part made;
        made.value = randomValue (random);
        made.name = random.chance (0.05) ? "X1" : random.chance (0.05) ? "The second resistor" : numbered ("X", part);
        while (made.nodes.size() < leadCount (made.value))
            made.nodes.push_back (randomNode (random, nodeCount));
        card.parts.push_back (std::move (made));
    }
    card.output = random.chance (0.2) ? "" : random.chance (0.1) ? "nowhere" : randomNode (random, nodeCount);
    return card;
}

Card ladderCard (int partCount)
{
    auto card = cardWithATap();
    for (int part = 0; part < partCount; ++part)
    {
        const auto before = numbered ("n", part / 2);
        const auto after = numbered ("n", part / 2 + 1);
        if (part % 2 == 0)
            card.parts.push_back ({ numbered ("R", part), { before, after }, Resistor { 4.7e3 }, 0.0 });
        else
            card.parts.push_back ({ numbered ("C", part), { after, "0" }, Capacitor { 10e-9 }, 0.0 });
    }
    card.output = numbered ("n", (partCount + 1) / 2);
    return card;
}

Card meshCard (Random& random, int partCount, int nodeCount)
{
    auto card = cardWithATap();
    for (int part = 0; part < partCount; ++part)
    {
        const int from = random.integer (0, nodeCount - 1);
        const int to = (from + random.integer (1, nodeCount)) % (nodeCount + 1);
        const auto name = [&] (int node)
        { return node == nodeCount ? std::string (commonNode) : numbered ("n", node); };
        card.parts.push_back ({ numbered ("R", part), { name (from), name (to) }, Resistor { 4.7e3 }, 0.0 });
    }
    card.output = numbered ("n", nodeCount - 1);
    return card;
}

Card shuffled (Card card, Random& random)
{
    for (int index = static_cast<int> (card.parts.size()) - 1; index > 0; --index)
        std::swap (card.parts[static_cast<std::size_t> (index)],
                   card.parts[static_cast<std::size_t> (random.integer (0, index))]);
    for (int index = static_cast<int> (card.taps.size()) - 1; index > 0; --index)
        std::swap (card.taps[static_cast<std::size_t> (index)],
                   card.taps[static_cast<std::size_t> (random.integer (0, index))]);
    return card;
}

} // namespace stopwright
