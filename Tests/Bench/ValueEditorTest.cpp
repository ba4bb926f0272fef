// SPDX-License-Identifier: GPL-3.0-or-later
//
// The line for typing, wherever it opens: how wide it is, that it is in sight, and who has the keyboard afterwards.
#include "Bench/ValueEditor.h"

#include "Bench/Lettering.h"
#include "Bench/SheetFixture.h"

#include <algorithm>
#include <array>

namespace stopwright
{

namespace
{

class ValueEditorTest : public SheetFixture
{
protected:
    static juce::Component* focused() { return juce::Component::getCurrentlyFocusedComponent(); }

    static std::string titleOf (const juce::Component* component)
    {
        return component != nullptr ? component->getTitle().toStdString() : "nobody";
    }

    std::vector<SchematicView::Selection> everyPart()
    {
        std::vector<SchematicView::Selection> all;
        all.reserve (schematic().layout().items.size());
        for (const auto& item : schematic().layout().items)
            if (item.kind != SheetItemKind::output)
                all.push_back ({ item.kind == SheetItemKind::tap, item.name });
        return all;
    }

    /// F2 and Escape with the part in hand, whoever has the keyboard; then its ring must have it.
    void expectBackAtThePart (const SchematicView::Selection& part)
    {
        const auto from = titleOf (focused());
        press (juce::KeyPress::F2Key, 1);
        ASSERT_NE (editorIn (sheet().desk()), nullptr) << part.name;
        EXPECT_EQ (focused(), editorIn (sheet().desk()));
        press (juce::KeyPress::escapeKey, 1);
        EXPECT_EQ (editorIn (sheet().desk()), nullptr);
        EXPECT_EQ (focused(), schematic().findCell (part))
            << part.name << " from " << from << ": " << titleOf (focused());
    }

    void expectBackAtEveryPart()
    {
        for (const auto& part : everyPart())
            for (auto* const before : std::initializer_list<juce::Component*> { nullptr, &sheet().addButton(),
                                                                                &view_->playBar().keyboard() })
            {
                schematic().takeHold (part);
                if (before != nullptr)
                    before->grabKeyboardFocus();
                expectBackAtThePart (part);
                sheet().desk().takeFocus();
                expectBackAtThePart (part);
            }
    }

    /// Return opens the line over what the knob lies in, Escape and Return close it again.
    void expectBackAtTheKnob (KnobCell& knob)
    {
        for (const int key : { juce::KeyPress::escapeKey, juce::KeyPress::returnKey })
        {
            knob.grabKeyboardFocus();
            press (juce::KeyPress::returnKey, 1);
            ASSERT_NE (editorIn (*knob.getParentComponent()), nullptr) << knob.getTitle();
            expectRoomAndSight (*editorIn (*knob.getParentComponent()));
            press (key, 1);
            EXPECT_EQ (editorIn (*knob.getParentComponent()), nullptr) << knob.getTitle();
            EXPECT_EQ (focused(), &knob) << knob.getTitle() << ": " << titleOf (focused());
        }
    }

    static void expectRoomAndSight (const juce::TextEditor& line)
    {
        constexpr float leastWidth = 130.0f; // eleven of the widest digits
        EXPECT_GE (line.getWidth(), Lettering::px (leastWidth)) << line.getTitle();
        EXPECT_TRUE (line.getParentComponent()->getLocalBounds().contains (line.getBounds())) << line.getTitle();
        if (const auto* const viewport = line.findParentComponentOfClass<juce::Viewport>())
        {
            const auto seen = juce::Rectangle<int> (viewport->getViewWidth(), viewport->getViewHeight());
            EXPECT_TRUE (seen.contains (viewport->getLocalArea (&line, line.getLocalBounds()))) << line.getTitle();
        }
    }

    std::vector<KnobCell*> everyKnob()
    {
        std::vector<KnobCell*> knobs;
        knobs.reserve (everyPart().size() + 2);
        for (const auto& part : everyPart())
            if (auto* const knob = dynamic_cast<KnobCell*> (schematic().findCell (part)))
                knobs.push_back (knob);
        auto* const tremulant = view_->rail().findTremulantRow ("Tremulant");
        for (auto* const knob : { &tremulant->rate(), &tremulant->depth() })
            knobs.push_back (knob);
        return knobs;
    }

    /// That of the place on the rail, in whose stead a low window shows the list first.
    KnobCell& mixingKnob()
    {
        if (! view_->place().isShowing())
            view_->column().placeButton().onClick();
        return *view_->place().mixing();
    }
};

constexpr std::array windows { juce::Point<int> { 900, 600 }, juce::Point<int> { 1200, 800 } };

} // namespace

TEST_F (ValueEditorTest, AfterF2AndEscapeThePartThatWasToBeRenamedHasTheKeyboard)
{
    for (const auto window : windows)
    {
        openView (window.x, window.y);
        expectBackAtEveryPart();
        session_.open (std::filesystem::path (STOPWRIGHT_ROOT) / "Tests/Organ/Documents/good/card-devices.json");
        expectBackAtEveryPart(); // parts without a number too
        session_.open (preset ("LarkfieldOrgan.json"));
    }
}

TEST_F (ValueEditorTest, OnlyWhatTheLineItselfWasRefusedForIsTakenBackWithIt)
{
    openView();
    session_.say ("The disk is full.");
    for (const int key : { juce::KeyPress::escapeKey, juce::KeyPress::returnKey })
    {
        schematic().findCell ({ false, "R5" })->grabKeyboardFocus();
        press (juce::KeyPress::returnKey, 1);
        press (key, 1);
        EXPECT_EQ (view_->messages().sentence(), "The disk is full.");
    }
    for (const int key : { juce::KeyPress::escapeKey, juce::KeyPress::returnKey })
    {
        schematic().findCell ({ false, "R5" })->grabKeyboardFocus();
        press (juce::KeyPress::returnKey, 1);
        editorIn (schematic())->setText ("4x7", false);
        press (juce::KeyPress::returnKey, 1);
        EXPECT_TRUE (view_->messages().sentence().contains ("4x7")) << view_->messages().sentence();
        editorIn (schematic())->setText ("47k", false);
        press (key, 1);
        EXPECT_EQ (view_->messages().sentence(), "");
    }
}

TEST_F (ValueEditorTest, WhatWasToldSinceARefusalStays)
{
    openView();
    schematic().findCell ({ false, "R5" })->grabKeyboardFocus();
    press (juce::KeyPress::returnKey, 1);
    editorIn (schematic())->setText ("4x7", false);
    press (juce::KeyPress::returnKey, 1);
    session_.say ("The sound device has gone.");
    press (juce::KeyPress::escapeKey, 1);
    EXPECT_EQ (view_->messages().sentence(), "The sound device has gone.");
}

TEST_F (ValueEditorTest, AfterF2AndEscapeAPartThatWasJustAddedHasTheKeyboard)
{
    openView();
    sheet().addPart (Resistor { 22e3 });
    sheet().addButton().grabKeyboardFocus(); // where its menu leaves it
    expectBackAtThePart (*schematic().selection());
}

TEST_F (ValueEditorTest, AfterF2AndEscapeOfANodeWhatHadTheKeyboardHasItAgain)
{
    openView();
    schematic().select ({});
    for (juce::Component* const before : std::initializer_list<juce::Component*> {
             &view_->playBar().keyboard(), &sheet().probeBox(), view_->place().mixing() })
        for (const std::string node : { "t", "m", "" })
        {
            schematic().setProbe (node);
            before->grabKeyboardFocus();
            press (juce::KeyPress::F2Key, 1);
            ASSERT_NE (editorIn (schematic()), nullptr) << node;
            press (juce::KeyPress::escapeKey, 1);
            EXPECT_EQ (editorIn (schematic()), nullptr) << node;
            EXPECT_EQ (focused(), before) << titleOf (focused());
        }
    for (const auto& part : everyPart())
    {
        schematic().takeHold (part);
        schematic().setProbe ("t");
        schematic().beginNodeRenaming();
        press (juce::KeyPress::escapeKey, 1);
        EXPECT_EQ (focused(), schematic().findCell (part)) << part.name << ": " << titleOf (focused());
    }
}

TEST_F (ValueEditorTest, AValueHasRoomToBeTypedInSightAndItsKnobHasTheKeyboardAfterwards)
{
    for (const float scale : { 1.0f, 1.5f })
        for (const auto window : windows)
        {
            settings_->setTextScale (scale);
            openView (window.x, window.y);
            for (auto* const knob : everyKnob())
                expectBackAtTheKnob (*knob);
            expectBackAtTheKnob (mixingKnob());
            view_->column().listButton().onClick();
            for (const auto kind : { KnobKind::value, KnobKind::windingOhms })
            {
                schematic().select (SchematicView::Selection { false, "L1" });
                auto* const number = sheet().desk().findCell ({ CardKnob::Place::part, "L1", kind });
                ASSERT_NE (number, nullptr);
                expectBackAtTheKnob (*number);
            }
        }
}

TEST_F (ValueEditorTest, TheLineStaysInSightOnASheetThatIsScrolled)
{
    settings_->setTextScale (1.5f);
    openView (1350, 900);
    auto* const viewport = schematic().findParentComponentOfClass<juce::Viewport>();
    ASSERT_NE (viewport, nullptr);
    ASSERT_GT (schematic().getWidth(), viewport->getViewWidth()); // else there is nothing to scroll
    for (const int left : { 0, schematic().getWidth() })
    {
        viewport->setViewPosition (left, 0);
        for (const auto& part : everyPart())
            if (auto* const knob = dynamic_cast<KnobCell*> (schematic().findCell (part)))
            {
                knob->beginTyping();
                ASSERT_NE (editorIn (schematic()), nullptr);
                expectRoomAndSight (*editorIn (schematic()));
                press (juce::KeyPress::escapeKey, 1);
            }
    }
}

TEST_F (ValueEditorTest, WhatIsDrawnAnewHandsTheKeyboardToNoOtherControl)
{
    openView();
    schematic().takeHold ({ false, "R5" });
    schematic().removeSelection();
    EXPECT_EQ (focused(), nullptr) << titleOf (focused());
    view_->tick();
    EXPECT_EQ (focused(), &view_->playBar().keyboard()) << titleOf (focused());

    session_.undo();
    schematic().takeHold ({ false, "R5" });
    auto& lead = sheet().desk().leadRows().at (1)->box();
    lead.grabKeyboardFocus();
    ASSERT_EQ (focused(), &lead);
    session_.editCard ("R6 removed", [] (Card& card)
                       { std::erase_if (card.parts, [] (const Part& part) { return part.name == "R6"; }); });
    EXPECT_EQ (focused(), &sheet().desk().leadRows().at (1)->box()) << titleOf (focused());
    sheet().desk().takeFocus();
    session_.undo();
    EXPECT_EQ (focused(), sheet().desk().findCell ({ CardKnob::Place::part, "R5", KnobKind::value }));
}

} // namespace stopwright
