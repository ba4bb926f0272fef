// SPDX-License-Identifier: GPL-3.0-or-later
//
// The cards of the demonstration organ on paper.
#include "Organ/CardDocument.h"
#include "Sheet/SchematicLayout.h"
#include "Sheet/SheetFaults.h"

#include <gtest/gtest.h>

#include <filesystem>

namespace stopwright
{

namespace
{

std::vector<std::filesystem::path> presetCards()
{
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator (STOPWRIGHT_ROOT "/Presets"))
        if (entry.path().extension() == ".json" && entry.path().stem() != "LarkfieldOrgan")
            files.push_back (entry.path());
    return files;
}

} // namespace

TEST (PresetSheets, AreFaultlessWithoutACrossing)
{
    const auto files = presetCards();
    ASSERT_GE (files.size(), 15U);
    for (const auto& file : files)
    {
        const auto card = readCard (file);
        const auto layout = layOutSchematic (card);
        for (const auto& fault : sheetFaults (card, layout))
            ADD_FAILURE() << file.stem() << ": " << fault;
        EXPECT_EQ (crossingsOf (layout), 0) << file.stem();
        for (const auto& node : layout.nodes)
            EXPECT_TRUE (node.name == commonNode || ! node.label.text.empty()) << file.stem() << ": node " << node.name;
    }
}

/// The signal of the Krummhorn's square goes straight through to the output.
TEST (PresetSheets, LayTheKrummhornsMainPathInOneRow)
{
    const auto card = readCard (STOPWRIGHT_ROOT "/Presets/Krummhorn8.json");
    const auto layout = layOutSchematic (card);
    const auto row = layout.findItem (SheetItemKind::output, 0)->middle.y;
    EXPECT_EQ (layout.findItem (SheetItemKind::tap, 0)->middle.y, row);
    for (const auto& item : layout.items)
        if (item.name == "R1" || item.name == "R2" || item.name == "L2")
        {
            EXPECT_EQ (item.middle.y, row) << item.name;
        }
}

} // namespace stopwright
