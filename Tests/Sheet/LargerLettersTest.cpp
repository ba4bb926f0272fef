// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/LargerLetters.h"

#include "Circuit/DeviceNetworks.h"
#include "Circuit/SampleNetworks.h"
#include "Organ/CardDocument.h"
#include "Organ/CardEdit.h"
#include "Sheet/SheetCards.h"
#include "Sheet/SheetFaults.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace stopwright
{

namespace
{

SchematicLayout krummhorn()
{
    return layOutSchematic (readCard (STOPWRIGHT_ROOT "/Presets/Krummhorn8.json"));
}

/// Every text of the sheet, in a fixed order.
std::vector<DrawnText> textsOf (const SchematicLayout& layout)
{
    std::vector<DrawnText> texts;
    for (const auto& item : layout.items)
        texts.insert (texts.end(), item.label.begin(), item.label.end());
    for (const auto& node : layout.nodes)
    {
        if (! node.label.text.empty())
            texts.push_back (node.label);
        for (const auto& sign : node.signs)
            if (! sign.name.text.empty())
                texts.push_back (sign.name);
    }
    return texts;
}

double smallestGrowth (const SchematicLayout& before, const SchematicLayout& after)
{
    const auto small = textsOf (before);
    const auto large = textsOf (after);
    EXPECT_EQ (small.size(), large.size());
    double least = 1e9;
    for (std::size_t text = 0; text < std::min (small.size(), large.size()); ++text)
    {
        EXPECT_EQ (small[text].text, large[text].text);
        least = std::min (least, large[text].size / small[text].size);
    }
    return least;
}

void expectFaultless (const Card& card, const std::string& name)
{
    const auto layout = layOutSchematic (card);
    for (const double factor : { 1.1, 1.25, 1.52 })
    {
        const auto larger = withLargerLetters (layout, factor);
        for (const auto& fault : sheetFaults (card, larger))
            ADD_FAILURE() << name << " at " << factor << ": " << fault;
        EXPECT_GE (smallestGrowth (layout, larger), 1.0) << name;
    }
}

} // namespace

TEST (LargerLetters, FactorOneChangesNothing)
{
    const auto layout = krummhorn();
    const auto same = withLargerLetters (layout, 1.0);
    EXPECT_DOUBLE_EQ (smallestGrowth (layout, same), 1.0);
    for (std::size_t item = 0; item < layout.items.size(); ++item)
        EXPECT_EQ (same.items[item].labelBox, layout.items[item].labelBox);
}

TEST (LargerLetters, SymbolsAndWiresStay)
{
    const auto layout = krummhorn();
    const auto larger = withLargerLetters (layout, 1.5);
    EXPECT_EQ (larger.width, layout.width);
    EXPECT_EQ (larger.height, layout.height);
    for (std::size_t item = 0; item < layout.items.size(); ++item)
    {
        EXPECT_EQ (larger.items[item].middle, layout.items[item].middle);
        EXPECT_EQ (larger.items[item].body, layout.items[item].body);
        EXPECT_EQ (larger.items[item].ringRadius, layout.items[item].ringRadius);
    }
    for (std::size_t node = 0; node < layout.nodes.size(); ++node)
        EXPECT_EQ (larger.nodes[node].wires, layout.nodes[node].wires);
}

/// A sheet at two thirds has every letter of the demonstration stop at nine or more of the ninths it is drawn with.
TEST (LargerLetters, TheKrummhornAtTwoThirdsHasNoLetterUnderNine)
{
    constexpr double scale = 0.66;
    const auto larger = withLargerLetters (krummhorn(), 1.0 / scale);
    for (const auto& text : textsOf (larger))
        EXPECT_GE (text.size * scale, 8.99) << text.text;
}

TEST (LargerLetters, NothingOverlapsOnThePresets)
{
    for (const auto* stop : { "Krummhorn8", "Oboe8", "Trumpet8" })
        expectFaultless (readCard (std::string (STOPWRIGHT_ROOT "/Presets/") + stop + ".json"), stop);
}

TEST (LargerLetters, NothingOverlapsOnAnyNetwork)
{
    Random random (7201);
    for (const auto& sample : sampleNetworks())
        expectFaultless (cardOf (sample.netlist), sample.name);
    for (int round = 0; round < 25; ++round)
    {
        const auto name = std::to_string (round);
        expectFaultless (cardOf (randomPassiveNetwork (random)), "passive " + name);
        expectFaultless (cardOf (randomActiveNetwork (random)), "active " + name);
        expectFaultless (cardOf (randomDeviceNetwork (random)), "device " + name);
        expectFaultless (randomUnfinishedCard (random, random.integer (0, 15)), "unfinished " + name);
    }
}

TEST (LargerLetters, ALongNodeNameIsShortenedRatherThanLeftSmall)
{
    auto card = readCard (STOPWRIGHT_ROOT "/Presets/Krummhorn8.json");
    const auto first = card.parts.front().nodes;
    for (const auto& name : first)
        if (name != commonNode && name != card.output)
            card = renameNode (card, name, "behind the part " + name + " of all");
    const auto layout = layOutSchematic (card);
    constexpr double factor = 1.5;
    const auto larger = withLargerLetters (layout, factor);
    int shortened = 0;
    for (std::size_t node = 0; node < layout.nodes.size(); ++node)
    {
        const auto& before = layout.nodes[node].label;
        const auto& after = larger.nodes[node].label;
        const bool isWhole = after.text == layout.nodes[node].name;
        EXPECT_TRUE (isWhole || after.text == layout.nodes[node].shortName || before.text.empty()) << after.text;
        if (layout.nodes[node].shortName != layout.nodes[node].name)
        {
            EXPECT_TRUE (! isWhole || after.size == factor * before.size) << after.text << " stayed small";
            shortened += isWhole ? 0 : 1;
        }
    }
    EXPECT_GT (shortened, 0);
    EXPECT_TRUE (sheetFaults (card, larger).empty());
}

} // namespace stopwright
