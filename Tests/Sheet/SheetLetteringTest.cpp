// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SheetLettering.h"

#include "Circuit/SampleNetworks.h"
#include "Sheet/SheetCards.h"
#include "Sheet/SheetFaults.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace stopwright
{

namespace
{

std::vector<std::string> lettersOf (const SchematicLayout& layout)
{
    std::vector<std::string> letters;
    for (const auto& item : layout.items)
        for (const auto& line : item.label)
            letters.push_back (line.text);
    return letters;
}

/// Turns every resistor and capacitor by as much.
Card turned (Card card, double factor)
{
    for (auto& part : card.parts)
    {
        if (auto* const resistor = std::get_if<Resistor> (&part.value))
            resistor->ohms *= factor;
        if (auto* const capacitor = std::get_if<Capacitor> (&part.value))
            capacitor->farads *= factor;
    }
    return card;
}

Card supplyAndLoad (double volts)
{
    Card card;
    card.parts = { { "V1", { "rail", "0" }, Supply { volts, 0.0 }, 0.0 },
                   { "R1", { "rail", "out" }, Resistor { 10e3 }, 0.0 },
                   { "R2", { "out", "0" }, Resistor { 10e3 }, 0.0 } };
    card.output = "out";
    return card;
}

} // namespace

TEST (SheetLettering, LeavesTheSheetOfTheSameCardAsItIs)
{
    for (const auto& sample : sampleNetworks())
    {
        const auto card = cardOf (sample.netlist);
        auto layout = layOutSchematic (card);
        const auto before = lettersOf (layout);
        EXPECT_TRUE (letterAnew (layout, card)) << sample.name;
        EXPECT_EQ (lettersOf (layout), before) << sample.name;
    }
    Random random (7301);
    for (int round = 0; round < 60; ++round)
    {
        const auto card = randomUnfinishedCard (random, 12);
        auto layout = layOutSchematic (card);
        const auto before = lettersOf (layout);
        EXPECT_TRUE (letterAnew (layout, card)) << round;
        EXPECT_EQ (lettersOf (layout), before) << round;
    }
}

TEST (SheetLettering, WritesWhatALayoutMadeAnewWouldAndKeepsThePlaces)
{
    const auto card = ladderCard (20);
    auto layout = layOutSchematic (card);
    const auto places = layout;
    const auto after = turned (card, 2.2);
    EXPECT_TRUE (letterAnew (layout, after));
    EXPECT_NE (lettersOf (layout), lettersOf (places));
    EXPECT_EQ (lettersOf (layout), lettersOf (layOutSchematic (after)));
    for (std::size_t index = 0; index < layout.items.size(); ++index)
        EXPECT_EQ (layout.items[index].middle, places.items[index].middle);
}

TEST (SheetLettering, ASheetThatIsSaidToBeGoodHasNoFaults)
{
    int good = 0;
    for (const auto& sample : sampleNetworks())
        for (const double factor : { 0.01, 0.37, 2.2, 15.0, 1234.0 })
        {
            const auto card = cardOf (sample.netlist);
            auto layout = layOutSchematic (card);
            const auto after = turned (card, factor);
            if (! letterAnew (layout, after))
                continue;
            ++good;
            const auto faults = sheetFaults (after, layout);
            EXPECT_TRUE (faults.empty()) << sample.name << " times " << factor << ": " << faults.front();
        }
    EXPECT_GT (good, 0);
}

TEST (SheetLettering, SaysThatALabelHasNoRoom)
{
    auto card = ladderCard (8);
    ASSERT_FALSE (card.taps.empty());
    card.taps.front().sourceOhms = 0.0;
    auto layout = layOutSchematic (card);
    card.taps.front().voltsPeakToPeak = 0.00123;
    card.taps.front().sourceOhms = 123e3;
    EXPECT_FALSE (letterAnew (layout, card));
    EXPECT_EQ (lettersOf (layout), lettersOf (layOutSchematic (card)));
}

TEST (SheetLettering, SaysThatALineMoreHasNoRoom)
{
    Card card = ladderCard (8);
    card.parts.push_back ({ "L1", { card.output, "0" }, Inductor { 0.5, 0.0, 0.0 }, 0.0 });
    auto layout = layOutSchematic (card);
    card.parts.back().value = Inductor { 0.5, 90.0, 0.0 };
    EXPECT_FALSE (letterAnew (layout, card));
}

TEST (SheetLettering, SaysThatARailHasTurnedOver)
{
    auto layout = layOutSchematic (supplyAndLoad (9.0));
    EXPECT_TRUE (letterAnew (layout, supplyAndLoad (8.0)));
    EXPECT_FALSE (letterAnew (layout, supplyAndLoad (-9.0)));
}

} // namespace stopwright
