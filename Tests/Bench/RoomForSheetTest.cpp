// SPDX-License-Identifier: GPL-3.0-or-later
//
// What gives way to the sheet in a small window: the part desk, the list beside the place on the rail, stops and keyboard.
#include "Bench/Lettering.h"
#include "Bench/SheetFixture.h"

#include <algorithm>

namespace stopwright
{

namespace
{

class RoomForSheetTest : public SheetFixture
{
protected:
    juce::Viewport& viewport() { return *schematic().findParentComponentOfClass<juce::Viewport>(); }

    /// Whether all of a part is in sight of the sheet.
    bool isSeen (const std::string& part)
    {
        const auto& found = cell (part);
        return viewport().getLocalBounds().contains (viewport().getLocalArea (&found, found.getLocalBounds()));
    }

    /// Until after a double-click could have been.
    static void waitForHand() { runMessages (juce::MouseEvent::getDoubleClickTimeout() + 100); }
};

} // namespace

TEST_F (RoomForSheetTest, ThePartDeskOpensWithAPartInHandAndNothingMoves)
{
    openView (1200, 800);
    const int low = sheet().desk().getHeight();
    const auto before = schematic().toView ({ 0.0, 0.0 });
    schematic().takeHold ({ false, "R5" });
    EXPECT_GT (sheet().desk().getHeight(), 2 * low);
    EXPECT_EQ (schematic().toView ({ 0.0, 0.0 }), before);
    EXPECT_EQ (viewport().getViewPosition(), juce::Point<int>());
    EXPECT_TRUE (isSeen ("R5"));
    schematic().select ({});
    EXPECT_EQ (sheet().desk().getHeight(), low);
    EXPECT_EQ (schematic().toView ({ 0.0, 0.0 }), before);
}

TEST_F (RoomForSheetTest, ANarrowDeskShowsNumbersOrLeadsAndWhatCanBeDone)
{
    openView (BenchView::smallestWidth, BenchView::smallestHeight);
    auto& desk = sheet().desk();
    schematic().takeHold ({ false, "L2" });
    const CardKnob winding { CardKnob::Place::part, "L2", KnobKind::windingOhms };
    auto& leads = desk.leadRows();
    ASSERT_EQ (leads.size(), 2U);
    EXPECT_TRUE (desk.findCell (winding)->isShowing());
    EXPECT_FALSE (leads.front()->isShowing());
    desk.turnButton().triggerClick();
    runMessages (20);
    EXPECT_FALSE (desk.findCell (winding)->isShowing());
    EXPECT_TRUE (leads.front()->isShowing() && leads.back()->isShowing());
    for (auto* child : desk.getChildren())
    {
        if (auto* button = dynamic_cast<juce::TextButton*> (child))
        {
            EXPECT_TRUE (button->isShowing() && ! button->getBounds().isEmpty()) << button->getButtonText();
        }
    }
    desk.takeFocus();
    EXPECT_TRUE (leads.front()->box().hasKeyboardFocus (true));

    view_->setSize (1400, 800);
    EXPECT_TRUE (desk.findCell (winding)->isShowing());
    EXPECT_TRUE (leads.front()->isShowing());
    EXPECT_FALSE (desk.turnButton().isShowing());
}

TEST_F (RoomForSheetTest, ADeskThatTellsWhereACardRestsStaysOpen)
{
    openView();
    session_.open (std::filesystem::path (STOPWRIGHT_ROOT) / "Tests/Organ/Documents/good/card-devices.json");
    ASSERT_FALSE (sheet().desk().restCells().empty());
    const int height = sheet().desk().getHeight();
    EXPECT_TRUE (sheet().desk().isInUse());
    schematic().takeHold ({ false, session_.card().parts.front().name });
    EXPECT_EQ (sheet().desk().getHeight(), height);
}

TEST_F (RoomForSheetTest, InTheSmallestWindowTheWholeHeightOfTheDemonstrationIsSeen)
{
    openView (BenchView::smallestWidth, BenchView::smallestHeight);
    EXPECT_LE (schematic().getHeight(), viewport().getViewHeight());
    for (const auto* part : { "C3", "R1", "C1", "L1" })
        EXPECT_TRUE (viewport().getLocalBounds().getHeight()
                     >= viewport().getLocalArea (&cell (part), cell (part).getLocalBounds()).getBottom())
            << part;
}

TEST_F (RoomForSheetTest, WithoutTheStopsTheWholeDemonstrationIsSeenInTheSmallestWindow)
{
    openView (BenchView::smallestWidth, BenchView::smallestHeight);
    EXPECT_FALSE (isSeen ("R5"));
    view_->showRail (false);
    EXPECT_FALSE (view_->column().isVisible());
    for (const auto& part : session_.card().parts)
        EXPECT_TRUE (isSeen (part.name)) << part.name;
    view_->showRail (true);
    EXPECT_TRUE (view_->column().isVisible());
}

TEST_F (RoomForSheetTest, APartThatTheMouseTakesStaysUnderItAndIsShownWhenTheHandLetsGo)
{
    openView (BenchView::smallestWidth, BenchView::smallestHeight);
    view_->showRail (false);
    auto& knob = cell ("C1");
    const auto middle = knob.ringArea().getCentre();
    const auto onScreen = view_->getLocalPoint (&knob, middle);
    mousePress (knob, middle);
    EXPECT_EQ (view_->getComponentAt (onScreen), &knob) << "the desk opened over it";
    const double before = value ("C1");
    mouseDragTo (knob, middle.translated (0, -14));
    EXPECT_EQ (view_->getComponentAt (onScreen), &knob);
    EXPECT_GT (value ("C1"), before);
    mouseRelease (knob, middle.translated (0, -14));
    EXPECT_EQ (view_->getComponentAt (onScreen), &knob) << "a second click would meet something else";
    for (int wait = 0; wait < 50 && ! sheet().desk().isInUse(); ++wait)
        waitForHand();
    ASSERT_TRUE (sheet().desk().isInUse());
    EXPECT_TRUE (sheet().desk().findCell ({ CardKnob::Place::part, "C1", KnobKind::value })->isShowing());
    EXPECT_TRUE (isSeen ("C1"));
}

TEST_F (RoomForSheetTest, ADoubleClickOnAnyRingMeetsItsPartTwice)
{
    for (const float scale : { 1.0f, 1.5f })
    {
        settings_->setTextScale (scale);
        openView (juce::roundToInt (scale * BenchView::smallestWidth),
                  juce::roundToInt (scale * BenchView::smallestHeight));
        view_->showRail (false);
        const auto parts = session_.card().parts; // a copy: turning them replaces the card
        for (const auto& part : parts)
        {
            const double saved = value (part.name);
            session_.turn ({ CardKnob::Place::part, part.name, KnobKind::value }, 1.5 * saved);
            schematic().select ({});
            auto& knob = cell (part.name);
            mouseDoubleClick (*view_, view_->getLocalPoint (&knob, knob.ringArea().getCentre()));
            ASSERT_NE (findPart (session_.card(), part.name), nullptr) << part.name;
            EXPECT_EQ (value (part.name), saved) << part.name;
        }
    }
}

TEST_F (RoomForSheetTest, AClickOnAWireScrollsNothing)
{
    openView (BenchView::smallestWidth, BenchView::smallestHeight);
    schematic().takeHold ({ false, "C2" });
    viewport().setViewPosition (schematic().getWidth(), 0);
    const auto before = viewport().getViewPosition();
    mousePress (schematic(), onWire ("out"));
    mouseRelease (schematic(), onWire ("out"));
    waitForHand();
    EXPECT_EQ (schematic().probe(), "out");
    EXPECT_EQ (viewport().getViewPosition(), before);
}

TEST_F (RoomForSheetTest, ThePartThatIsTakenIsSeenByItsNumbers)
{
    openView (BenchView::smallestWidth, BenchView::smallestHeight);
    auto& desk = sheet().desk();
    schematic().takeHold ({ false, "L2" });
    desk.turnButton().triggerClick();
    runMessages (20);
    schematic().takeHold ({ false, "L1" });
    EXPECT_TRUE (desk.findCell ({ CardKnob::Place::part, "L1", KnobKind::value })->isShowing());
}

TEST_F (RoomForSheetTest, AfterRemovingFromTheDeskTheKeyboardIsAtNoOtherButton)
{
    openView();
    schematic().takeHold ({ false, "R6" });
    const auto isRemove = [] (const juce::Component* child)
    {
        const auto* const button = dynamic_cast<const juce::TextButton*> (child);
        return button != nullptr && button->getButtonText() == "Remove";
    };
    auto* const found = *std::ranges::find_if (sheet().desk().getChildren(), isRemove);
    found->grabKeyboardFocus();
    dynamic_cast<juce::TextButton&> (*found).onClick();
    runMessages (20);
    view_->tick();
    EXPECT_EQ (findPart (session_.card(), "R6"), nullptr);
    EXPECT_EQ (dynamic_cast<juce::Button*> (juce::Component::getCurrentlyFocusedComponent()), nullptr);
}

TEST_F (RoomForSheetTest, APartThatTheKeyboardReachesIsInSightOnBothAxes)
{
    openView (BenchView::smallestWidth, BenchView::smallestHeight);
    for (const auto& part : session_.card().parts)
    {
        schematic().takeHold ({ false, part.name });
        EXPECT_TRUE (isSeen (part.name)) << part.name;
    }
    schematic().takeHold ({ false, "R1" });
    schematic().takeHold ({ false, "R5" });
    cell ("R1").grabKeyboardFocus();
    EXPECT_TRUE (isSeen ("R1"));
}

TEST_F (RoomForSheetTest, WithoutTheKeyboardTheWindowKeepsTheKeyboardFocus)
{
    openView();
    const int before = sheet().getHeight();
    view_->showKeyboard (false);
    EXPECT_GT (sheet().getHeight(), before + 60);
    EXPECT_FALSE (view_->playBar().keyboard().isShowing());
    view_->playBar().takeFocus();
    const auto* const focused = juce::Component::getCurrentlyFocusedComponent();
    ASSERT_NE (focused, nullptr);
    EXPECT_TRUE (view_->playBar().isParentOf (focused));
    EXPECT_TRUE (focused->isShowing());
    view_->showKeyboard (true);
    EXPECT_EQ (sheet().getHeight(), before);
}

TEST_F (RoomForSheetTest, FunctionKeysLeaveOutStopsAndKeyboardAndTheNextRunFollows)
{
    openView();
    ASSERT_TRUE (view_->keyPressed (juce::KeyPress (juce::KeyPress::F8Key)));
    ASSERT_TRUE (view_->keyPressed (juce::KeyPress (juce::KeyPress::F9Key)));
    EXPECT_FALSE (view_->column().isVisible());
    EXPECT_FALSE (view_->playBar().keyboard().isVisible());
    view_.reset();
    openView();
    EXPECT_FALSE (view_->column().isVisible());
    EXPECT_FALSE (view_->playBar().keyboard().isVisible());
    view_->keyPressed (juce::KeyPress (juce::KeyPress::F8Key));
    view_->keyPressed (juce::KeyPress (juce::KeyPress::F9Key));
    EXPECT_TRUE (view_->column().isVisible());
    EXPECT_TRUE (view_->playBar().keyboard().isVisible());
}

TEST_F (RoomForSheetTest, AColumnThatIsTooLowForBothShowsOneAtATime)
{
    openView (BenchView::smallestWidth, BenchView::smallestHeight);
    auto& column = view_->column();
    ASSERT_FALSE (column.hasRoomForBoth());
    EXPECT_TRUE (view_->rail().isShowing());
    EXPECT_FALSE (view_->place().isShowing());
    column.placeButton().triggerClick();
    runMessages (20);
    EXPECT_FALSE (view_->rail().isShowing());
    EXPECT_TRUE (view_->place().isShowing());
    EXPECT_TRUE (column.placeButton().getToggleState());
    EXPECT_GE (view_->place().getHeight(), Lettering::px (StopPlacePanel::height));
    column.listButton().triggerClick();
    runMessages (20);
    EXPECT_TRUE (view_->rail().isShowing());

    view_->setSize (1200, 800);
    EXPECT_TRUE (column.hasRoomForBoth());
    EXPECT_TRUE (view_->rail().isShowing() && view_->place().isShowing());
    EXPECT_FALSE (column.placeButton().isVisible());
}

TEST_F (RoomForSheetTest, ASentenceOfOneLineMovesNothing)
{
    openView();
    const auto before = sheet().getBounds();
    session_.say ("There is nothing to undo.");
    EXPECT_EQ (sheet().getBounds(), before);
}

} // namespace stopwright
