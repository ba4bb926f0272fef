// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchFixture.h"
#include "Organ/CardDocument.h"
#include "Units/Decibels.h"

#include <cmath>

namespace stopwright
{

namespace
{

class KnobCellTest : public BenchFixture
{
protected:
    /// C4 held, and what it sounds like.
    double holdKey()
    {
        processor_.engine().key (60, true);
        return settledRms();
    }

    juce::Point<int> ring (KnobCell& knob) { return knob.ringArea().getCentre(); }
};

} // namespace

TEST_F (KnobCellTest, DragStepsThroughTheSeriesInDocumentAndSound)
{
    openView();
    auto& knob = cell ("R5");
    const double soundBefore = holdKey();
    ASSERT_EQ (value ("R5"), 47e3);

    mousePress (knob, ring (knob));
    mouseDragTo (knob, ring (knob).translated (0, 7 * 12 + 1)); // twelve steps of E12 down: a decade
    mouseRelease (knob, ring (knob).translated (0, 7 * 12 + 1));

    EXPECT_EQ (value ("R5"), 4.7e3);
    const double changeDb = toDecibels (settledRms() / soundBefore);
    EXPECT_LT (changeDb, -3.0); // ten times the load on the output
    EXPECT_GT (changeDb, -30.0);
}

TEST_F (KnobCellTest, AKnobNobodyTouchesLeavesTheSoundAlone)
{
    openView();
    const double soundBefore = holdKey();
    mouseMoveTo (cell ("R5"), ring (cell ("R5")));
    EXPECT_NEAR (toDecibels (settledRms() / soundBefore), 0.0, 0.05);
}

TEST_F (KnobCellTest, OneDragIsOneStepOfTheHistory)
{
    openView();
    auto& knob = cell ("R5");
    mousePress (knob, ring (knob));
    for (int pixels = 7; pixels <= 70; pixels += 7)
        mouseDragTo (knob, ring (knob).translated (0, pixels));
    mouseRelease (knob, ring (knob).translated (0, 70));
    ASSERT_NE (value ("R5"), 47e3);
    session_.undo();
    EXPECT_EQ (value ("R5"), 47e3);
    EXPECT_FALSE (session_.history().canUndo());
}

TEST_F (KnobCellTest, DragWithShiftMovesWithoutSteps)
{
    openView();
    auto& knob = cell ("R5");
    const juce::ModifierKeys shift (juce::ModifierKeys::shiftModifier);
    mousePress (knob, ring (knob), shift);
    mouseDragTo (knob, ring (knob).translated (0, -30), shift);
    mouseRelease (knob, ring (knob).translated (0, -30), shift);
    // A tenth of a decade up, kept to four digits.
    EXPECT_NEAR (value ("R5"), 47e3 * std::pow (10.0, 0.1), 10.0);
}

TEST_F (KnobCellTest, WheelOnTheRingStepsAndBesideItDoesNot)
{
    openView();
    auto& knob = cell ("R5");
    mouseWheel (knob, ring (knob), 1.0f);
    EXPECT_EQ (value ("R5"), 56e3);
    mouseWheel (knob, ring (knob), -1.0f);
    mouseWheel (knob, ring (knob), -1.0f);
    EXPECT_EQ (value ("R5"), 39e3);
    mouseWheel (knob, { knob.getWidth() - 6, knob.getHeight() / 2 }, 1.0f);
    EXPECT_EQ (value ("R5"), 39e3);
}

TEST_F (KnobCellTest, ARingThatScrollsUnderThePointerDoesNotTakeTheWheel)
{
    openView (900, 600);
    auto& knob = cell ("R5");
    const double before = value ("R5");
    auto* const list = knob.findParentComponentOfClass<juce::Viewport>();
    ASSERT_NE (list, nullptr);

    // The wheel beside the ring scrolls; then the ring is brought to where the pointer rests.
    const juce::Point<int> beside { knob.getWidth() - 6, knob.getHeight() / 2 };
    knob.toFront (false);
    const auto rest = knob.localPointToGlobal (beside);
    mouseWheel (knob, beside, -1.0f);
    knob.setTopLeftPosition (knob.getPosition() + rest - knob.localPointToGlobal (ring (knob)));
    ASSERT_TRUE (knob.ringArea().contains (knob.getLocalPoint (nullptr, rest)));
    mouseWheel (knob, knob.getLocalPoint (nullptr, rest), -1.0f);
    EXPECT_EQ (value ("R5"), before);

    list->setViewPosition (cell ("R6").getPosition());
    mouseWheel (cell ("R6"), ring (cell ("R6")), -1.0f);
    EXPECT_NE (value ("R6"), 10e3) << "once the pointer has moved a ring takes it again";
}

TEST_F (KnobCellTest, AWheelTurnedOnIsOneStepOfTheHistory)
{
    openView();
    auto& knob = cell ("R5");
    for (int notch = 0; notch < 5; ++notch)
        mouseWheel (knob, ring (knob), 1.0f);
    session_.undo();
    EXPECT_EQ (value ("R5"), 47e3);
}

TEST_F (KnobCellTest, ArrowKeysStepAndHomeGoesBackToTheSavedValue)
{
    openView();
    auto& knob = cell ("C1");
    knob.keyPressed (juce::KeyPress (juce::KeyPress::upKey));
    EXPECT_EQ (value ("C1"), 8.2e-9);
    knob.keyPressed (juce::KeyPress (juce::KeyPress::rightKey));
    EXPECT_EQ (value ("C1"), 10e-9);
    knob.keyPressed (juce::KeyPress (juce::KeyPress::upKey, juce::ModifierKeys::shiftModifier, 0));
    EXPECT_NEAR (value ("C1"), 10.09e-9, 0.02e-9);
    knob.keyPressed (juce::KeyPress (juce::KeyPress::homeKey));
    EXPECT_EQ (value ("C1"), 6.8e-9);
}

TEST_F (KnobCellTest, StepsFollowTheChosenSeries)
{
    auto& view = openView();
    view.sheet().setSeries (Series::e24);
    cell ("R5").keyPressed (juce::KeyPress (juce::KeyPress::upKey));
    EXPECT_EQ (value ("R5"), 51e3); // IEC 60063, E24
}

TEST_F (KnobCellTest, DoubleClickGoesBackToTheSavedValue)
{
    openView();
    auto& knob = cell ("R5");
    session_.turn (knob.knob(), 10e3);
    for (int click = 0; click < 2; ++click)
    {
        mouseDragTo (knob, ring (knob)); // pressed
        mouseRelease (knob, ring (knob));
    }
    EXPECT_EQ (value ("R5"), 47e3);
}

TEST_F (KnobCellTest, TypedValuesAreTaken)
{
    openView();
    EXPECT_TRUE (cell ("R5").takeText ("4k7"));
    EXPECT_EQ (value ("R5"), 4.7e3);
    EXPECT_TRUE (cell ("C1").takeText (" 22n "));
    EXPECT_EQ (value ("C1"), 22e-9);
    EXPECT_TRUE (cell ("L1").takeText ("1H5"));
    EXPECT_EQ (value ("L1"), 1.5);
}

TEST_F (KnobCellTest, BadTextIsAnsweredInASentenceAndChangesNothing)
{
    auto& view = openView();
    const auto before = cardText (session_.card());
    for (const auto* text : { "4x7", "", "-5", "22M", "1e99", "0" })
    {
        EXPECT_FALSE (cell ("C1").takeText (text)) << text;
        const auto sentence = view.messages().sentence();
        EXPECT_TRUE (sentence.endsWithChar ('.')) << sentence;
        EXPECT_GT (sentence.length(), 20) << text;
        session_.say ({});
    }
    EXPECT_EQ (cardText (session_.card()), before);
}

TEST_F (KnobCellTest, TypingADigitOpensTheValue)
{
    openView();
    auto& knob = cell ("R5");
    knob.keyPressed (juce::KeyPress ('3', {}, '3'));
    const auto findEditor = [&]
    {
        for (auto* child : knob.getParentComponent()->getChildren())
            if (auto* const editor = dynamic_cast<juce::TextEditor*> (child))
                return editor;
        return static_cast<juce::TextEditor*> (nullptr);
    };
    auto* const editor = findEditor();
    ASSERT_NE (editor, nullptr);
    EXPECT_EQ (editor->getText(), "3");
    editor->setText ("33k");
    editor->onReturnKey();
    EXPECT_EQ (value ("R5"), 33e3);
    EXPECT_EQ (findEditor(), nullptr);
    runMessages (20);
}

TEST_F (KnobCellTest, ATapHasItsLevelKnob)
{
    auto& view = openView();
    const CardKnob level { CardKnob::Place::tapLevel, "Square 8", KnobKind::value };
    auto* knob = view.sheet().findCell (level);
    ASSERT_NE (knob, nullptr);
    const double soundBefore = holdKey();
    ASSERT_TRUE (knob->takeText ("0.25"));
    EXPECT_EQ (valueOf (session_.card(), level), 0.25);
    EXPECT_LT (toDecibels (settledRms() / soundBefore), -6.0);
}

} // namespace stopwright
