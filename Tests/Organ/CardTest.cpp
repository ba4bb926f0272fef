// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/Card.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

Tap tapOf (const std::string& name, WaveKind kind, const std::string& footage)
{
    Tap tap;
    tap.name = name;
    tap.wave.kind = kind;
    tap.footage = Footage::parse (footage);
    tap.node = "n" + name;
    tap.sourceOhms = 4700.0;
    return tap;
}

Card threeTaps()
{
    Card card;
    card.taps = { tapOf ("A", WaveKind::square, "8"), tapOf ("B", WaveKind::sawtooth, "2 2/3"),
                  tapOf ("C", WaveKind::square, "2 2/3") };
    card.output = "out";
    return card;
}

} // namespace

TEST (Card, BecomesANetworkWithOneSourcePerTap)
{
    auto card = threeTaps();
    card.parts.push_back ({ "R1", { "nA", "out" }, Resistor { 1000.0 }, 0.0 });
    const auto netlist = netlistOf (card);
    ASSERT_EQ (netlist.sources.size(), 3U);
    EXPECT_EQ (netlist.sources[1].name, "B");
    EXPECT_EQ (netlist.sources[1].node, "nB");
    EXPECT_EQ (netlist.sources[1].sourceOhms, 4700.0);
    ASSERT_EQ (netlist.parts.size(), 1U);
    EXPECT_EQ (netlist.output, "out");
}

TEST (Card, SharesEqualWaves)
{
    const auto waves = tapWavesOf (threeTaps());
    EXPECT_EQ (waves.waves.size(), 2U);
    EXPECT_EQ (waves.waveOfTap, (std::vector<int> { 0, 1, 0 }));
}

TEST (Card, ListsMutationsOnce)
{
    EXPECT_EQ (mutationsOf (threeTaps()), std::vector<Footage> { Footage::parse ("2 2/3") });
}

} // namespace stopwright
