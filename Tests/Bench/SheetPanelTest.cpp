// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/SheetPanel.h"

#include "Bench/Lettering.h"
#include "Bench/SheetFixture.h"
#include "Bench/SwitchCell.h"

#include <algorithm>
#include <fstream>

namespace stopwright
{

namespace
{

class SheetPanelTest : public SheetFixture
{
protected:
    /// Whether a text over the sheet holds these words, and has room for them.
    bool titleHas (const juce::String& words)
    {
        bool isThere = false;
        Lettering::observer = [&] (const Lettering::Drawn& drawn)
        {
            if (drawn.owner != &sheet() || ! drawn.text.contains (words))
                return;
            isThere = true;
            EXPECT_TRUE (drawn.area.contains (drawn.needed)) << drawn.text;
            EXPECT_LE (drawn.needed.getRight(), sheet().addButton().getX()) << drawn.text;
        };
        sheet().createComponentSnapshot (sheet().getLocalBounds());
        Lettering::observer = {};
        return isThere;
    }
};

} // namespace

TEST_F (SheetPanelTest, EveryPartAndTapHasItsRingWhereItIsDrawn)
{
    openView();
    for (const auto& item : schematic().layout().items)
    {
        if (item.kind == SheetItemKind::output)
            continue;
        const auto* const cell = schematic().findCell ({ item.kind == SheetItemKind::tap, item.name });
        ASSERT_NE (cell, nullptr) << item.name;
        const auto at = schematic().toView (item.middle).roundToInt();
        EXPECT_EQ (schematic().getComponentAt (at), cell) << item.name;
    }
}

TEST_F (SheetPanelTest, APartThatTheKeyboardReachesIsInSight)
{
    openView (900, 600);
    auto* const viewport = schematic().findParentComponentOfClass<juce::Viewport>();
    ASSERT_NE (viewport, nullptr);
    schematic().takeHold ({ false, "R5" }); // the part desk opens, and both ways there is something to scroll
    ASSERT_GT (schematic().getWidth(), viewport->getViewWidth());
    ASSERT_GT (schematic().getHeight(), viewport->getViewHeight());
    for (const bool isForth : { true, false })
    {
        auto items = schematic().layout().items;
        if (! isForth)
            std::ranges::reverse (items);
        for (const auto& item : items)
        {
            if (item.kind == SheetItemKind::output)
                continue;
            schematic().takeHold ({ item.kind == SheetItemKind::tap, item.name });
            const auto* const cell = schematic().findCell ({ item.kind == SheetItemKind::tap, item.name });
            EXPECT_TRUE (viewport->getViewArea().contains (cell->getBounds())) << item.name;
        }
    }
}

TEST_F (SheetPanelTest, ADragOnTheRingTurnsThePartAndTheSound)
{
    openView();
    processor_.engine().key (60, true);
    const double before = settledRms();
    auto& knob = cell ("R5");
    const auto middle = knob.ringArea().getCentre();
    mousePress (knob, middle);
    mouseDragTo (knob, middle.translated (0, 140));
    mouseRelease (knob, middle.translated (0, 140));
    EXPECT_LT (value ("R5"), 10e3);
    EXPECT_LT (settledRms(), 0.9 * before);
    EXPECT_TRUE (session_.history().canUndo());
    session_.undo();
    EXPECT_FALSE (session_.history().canUndo());
    EXPECT_NEAR (settledRms() / before, 1.0, 0.01);
}

TEST_F (SheetPanelTest, AClickOnAWirePutsTheProbeThere)
{
    openView();
    std::string told = "-";
    sheet().onProbe = [&] (const std::string& node) { told = node; };
    mousePress (schematic(), onWire ("t"));
    mouseRelease (schematic(), onWire ("t"));
    EXPECT_EQ (schematic().probe(), "t");
    EXPECT_EQ (told, "t");
    EXPECT_EQ (sheet().probeBox().getText(), "node t");
    sheet().probeBox().setSelectedId (1, juce::sendNotificationSync);
    EXPECT_EQ (schematic().probe(), "");
    EXPECT_EQ (told, "");
}

TEST_F (SheetPanelTest, ALeadIsSolderedElsewhereByDraggingItsEnd)
{
    openView();
    const auto before = text();
    schematic().select (SchematicView::Selection { false, "R5" });
    auto* const handle = schematic().findHandle (0);
    ASSERT_NE (handle, nullptr);
    const auto place = handle->getLocalPoint (&schematic(), onWire ("m"));
    mousePress (*handle, handle->getLocalBounds().getCentre());
    mouseDragTo (*handle, place);
    mouseRelease (*handle, place);
    runMessages (20);
    EXPECT_EQ (findPart (session_.card(), "R5")->nodes.front(), "m");
    EXPECT_EQ (session_.history().undoName(), "R5 soldered to m");
    session_.undo();
    EXPECT_EQ (text(), before);
}

TEST_F (SheetPanelTest, PartsAreAddedNamedRewiredAndRemovedAndUndoneToTheByte)
{
    openView();
    const auto before = text();
    sheet().addPart (Resistor { 22e3 });
    const auto added = *schematic().selection();
    ASSERT_NE (findPart (session_.card(), added.name), nullptr);
    EXPECT_EQ (findPart (session_.card(), added.name)->nodes, (std::vector<std::string> { "out", "0" }));
    EXPECT_TRUE (sheet().desk().takeName ("Rload"));
    EXPECT_NE (findPart (session_.card(), "Rload"), nullptr);
    EXPECT_FALSE (sheet().desk().takeName ("R5")); // taken
    EXPECT_EQ (schematic().selection()->name, "Rload");
    sheet().desk().leadRows().front()->onChoose ("t");
    runMessages (20);
    EXPECT_EQ (findPart (session_.card(), "Rload")->nodes.front(), "t");
    schematic().removeSelection();
    EXPECT_EQ (findPart (session_.card(), "Rload"), nullptr);
    EXPECT_EQ (text(), before);
    while (session_.history().canUndo())
        session_.undo();
    EXPECT_EQ (text(), before);
    EXPECT_FALSE (session_.document().isUnsaved());
}

TEST_F (SheetPanelTest, ATapIsTakenFromAnotherKeyedBusInOneGesture)
{
    openView();
    const auto before = text();
    const auto tap = session_.card().taps.front();
    const auto buses = session_.document().instrument->keyedBuses; // a copy: the edit replaces the instrument
    const auto other = std::ranges::find_if (buses, [&] (const KeyedBus& bus) { return bus.footage != tap.footage; });
    ASSERT_NE (other, buses.end());
    schematic().select (SchematicView::Selection { true, tap.name });
    sheet().desk().leadRows().front()->onChoose (other->name);
    runMessages (20);
    EXPECT_EQ (findTap (session_.card(), tap.name)->footage, other->footage);
    EXPECT_EQ (view_->place().changes().getButtonText(), "1 change at the organ");
    session_.undo();
    EXPECT_EQ (text(), before);
    EXPECT_EQ (view_->place().changes().getButtonText(), "As found");
}

TEST_F (SheetPanelTest, AStopInHandThatIsRetiredIsSaidToBeSilent)
{
    openView (1680, 1050);
    EXPECT_FALSE (titleHas ("retired"));
    EXPECT_EQ (sheet().getDescription(), "Krummhorn 8");
    session_.draw (stop ("Krummhorn 8"), false);
    EXPECT_TRUE (titleHas ("retired: not heard"));
    EXPECT_TRUE (titleHas ("Krummhorn 8"));
    EXPECT_EQ (sheet().getDescription(), "Krummhorn 8, retired: not heard");
    session_.draw (stop ("Krummhorn 8"), true);
    EXPECT_FALSE (titleHas ("retired"));

    session_.chooseStop (stop ("Oboe 8"));
    EXPECT_EQ (sheet().getDescription(), "Oboe 8, retired: not heard");
    session_.draw (stop ("Krummhorn 8"), false); // another stop's tablet changes nothing of it
    EXPECT_TRUE (titleHas ("retired: not heard"));
    session_.drawOnly ({ "Oboe 8" });
    EXPECT_EQ (sheet().getDescription(), "Oboe 8");

    session_.open (preset ("Oboe8.json")); // a card alone has no tablet
    EXPECT_FALSE (titleHas ("retired"));
    EXPECT_EQ (sheet().getDescription(), "Oboe 8");
}

TEST_F (SheetPanelTest, TheWordThatItIsRetiredHasRoomInEveryWindow)
{
    for (const auto& [width, height] : { std::pair { 900, 600 }, std::pair { 1200, 800 }, std::pair { 1680, 1050 } })
        for (const float scale : { 1.0f, 1.5f })
            for (const auto* const tablet : { "Krummhorn 8", "Stopped flute 8", "Quint 2 2/3" })
            {
                settings_->setTextScale (scale);
                session_.retireAll();
                session_.chooseStop (stop (tablet));
                openView (width, height);
                EXPECT_TRUE (titleHas ("retired")) << width << " at " << scale << ": " << tablet;
            }
}

TEST_F (SheetPanelTest, AnIllegalStateIsSaidWhereItIsAndTheSoundGoesOn)
{
    openView();
    processor_.engine().key (60, true);
    const double before = settledRms();
    session_.editCard ("output lost", [] (Card& card) { card.output = "nowhere"; });
    EXPECT_TRUE (sheet().faultText().contains ("nowhere")) << sheet().faultText();
    EXPECT_TRUE (sheet().faultText().contains ("sounds on"));
    EXPECT_NEAR (settledRms() / before, 1.0, 0.01);
    session_.undo();
    EXPECT_EQ (sheet().faultText(), "");
}

TEST_F (SheetPanelTest, KeysWalkRenameAndRemove)
{
    openView();
    schematic().takeHold ({ false, "R5" });
    ASSERT_TRUE (schematic().keyPressed ({ juce::KeyPress::leftKey, juce::ModifierKeys::commandModifier, 0 }));
    EXPECT_NE (schematic().selection()->name, "R5");
    const auto walked = schematic().selection()->name;
    ASSERT_TRUE (schematic().keyPressed (juce::KeyPress (juce::KeyPress::deleteKey)));
    EXPECT_EQ (findPart (session_.card(), walked), nullptr);
    session_.undo();
    EXPECT_NE (findPart (session_.card(), walked), nullptr);
}

TEST_F (SheetPanelTest, ASwitchIsThrownWhereItIsDrawn)
{
    std::ofstream (preset ("Switched.json")) << R"({
  "stopwright": 1, "kind": "card", "name": "Switched",
  "taps": [ { "name": "W1", "wave": "square", "footage": "8", "vpp": 2.0, "sourceOhms": "1k", "node": "in" } ],
  "parts": [ { "name": "R1", "kind": "resistor", "nodes": ["in", "out"], "value": "10k" },
             { "name": "S1", "kind": "switch", "nodes": ["out", "s"], "closed": false },
             { "name": "R2", "kind": "resistor", "nodes": ["s", "0"], "value": "1k" } ],
  "output": "out" })";
    openView();
    session_.open (preset ("Switched.json"));
    auto* const contact = schematic().findCell ({ false, "S1" });
    ASSERT_NE (dynamic_cast<SwitchCell*> (contact), nullptr);
    mousePress (*contact, contact->getLocalBounds().getCentre());
    mouseRelease (*contact, contact->getLocalBounds().getCentre());
    EXPECT_TRUE (std::get<Switch> (findPart (session_.card(), "S1")->value).closed);
}

/// Nine pixels are what the smallest letters of the sheet have where nothing shrinks.
TEST_F (SheetPanelTest, LettersStayLegibleInASmallWindow)
{
    const juce::Point<int> windows[] = { { 900, 600 }, { 1200, 800 }, { 1680, 1050 } };
    for (const auto window : windows)
    {
        openView (window.x, window.y);
        const float scale = schematic().toView ({ 1.0, 0.0 }).x - schematic().toView ({ 0.0, 0.0 }).x;
        RecordProperty ("scale" + std::to_string (window.x), std::to_string (scale));
        for (const auto& item : schematic().layout().items)
            for (const auto& line : item.label)
                EXPECT_GE (line.size * scale, 8.99) << line.text << " in a window " << window.x << " wide";
        for (const auto& node : schematic().layout().nodes)
        {
            EXPECT_TRUE (node.label.text.empty() || node.label.size * scale >= 8.99)
                << node.name << " in a window " << window.x << " wide";
        }
    }
}

} // namespace stopwright
