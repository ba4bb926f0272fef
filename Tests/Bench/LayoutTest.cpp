// SPDX-License-Identifier: GPL-3.0-or-later
//
// Whether everything in the window has room, at several sizes and lettering scales, and pictures of it to look at.
#include "Bench/LayoutFixture.h"

#include <algorithm>

namespace stopwright
{

namespace
{

class LayoutTest : public LayoutFixture
{};

} // namespace

TEST_P (LayoutTest, NoTextIsCutAndNothingOverlaps)
{
    open();
    processor_.engine().key (60, true);
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value },
                   21540.0); // off the series and unsaved: the longest texts
    play (0.2);
    view_->tick();
    view_->readings().finish();
    std::vector<Lettering::Drawn> texts;
    const auto image = paint (*view_, texts);
    save (image, "bench");
    EXPECT_GE (texts.size(), 60u);
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
    const auto& trials = view_->sheet().trials().menuButton();
    EXPECT_GE (trials.getWidth(),
               Lettering::widthOf (Lettering::body(), trials.getButtonText()) + Lettering::px (12.0f));
}

TEST_P (LayoutTest, AStopInHandThatIsRetiredHasRoom)
{
    session_.retireAll();
    open();
    std::vector<Lettering::Drawn> texts;
    save (paint (*view_, texts), "retired");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
    EXPECT_TRUE (std::ranges::any_of (texts, [] (const auto& drawn) { return drawn.text.startsWith ("retired"); }));
}

TEST_P (LayoutTest, AValueIsTypedInSight)
{
    open();
    auto* const knob = view_->sheet().findCell ({ CardKnob::Place::part, "R5", KnobKind::value });
    ASSERT_NE (knob, nullptr);
    knob->grabKeyboardFocus();
    knob->beginTyping();
    std::vector<Lettering::Drawn> texts;
    save (paint (*view_, texts), "value");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
}

TEST_P (LayoutTest, TheStopListHasRoomToItsEnd)
{
    open();
    Telemetry telemetry;
    telemetry.clips = ~std::uint64_t { 0 }; // every lamp lit
    view_->rail().show (telemetry);
    for (std::size_t index = 0; index < session_.document().instrument->stops.size(); ++index)
        session_.draw (static_cast<int> (index), true); // bold names
    std::vector<Lettering::Drawn> texts;
    save (paint (*view_, texts), "stops");
    expectTextsHaveRoom (texts);

    view_->rail().showEnd();
    texts.clear();
    save (paint (*view_, texts), "stops_end");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
    EXPECT_TRUE (std::ranges::any_of (texts, [] (const auto& drawn) { return drawn.text.endsWith (": clipped"); }));
}

TEST_P (LayoutTest, ThePlaceOnTheRailHasRoom)
{
    open();
    if (! view_->place().isShowing())
        view_->column().placeButton().onClick();
    view_->place().finish();
    std::vector<Lettering::Drawn> texts;
    save (paint (*view_, texts), "place");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
    const auto isSaid = [&] (const char* words)
    { return std::ranges::any_of (texts, [&] (const auto& drawn) { return drawn.text.contains (words); }); };
    EXPECT_TRUE (isSaid ("dB(A)") && isSaid ("dB rms") && isSaid ("String 8"));
}

TEST_P (LayoutTest, APartInHandHasRoom)
{
    open();
    view_->sheet().schematic().takeHold ({ false, "L2" });
    std::vector<Lettering::Drawn> texts;
    save (paint (*view_, texts), "part");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
    if (! view_->sheet().desk().turnButton().isShowing())
        return;
    view_->sheet().desk().turnButton().triggerClick();
    runMessages (20);
    texts.clear();
    save (paint (*view_, texts), "leads");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
}

TEST_P (LayoutTest, WithoutStopsAndKeyboardTheRestHasRoom)
{
    open();
    view_->showRail (false);
    view_->showKeyboard (false);
    std::vector<Lettering::Drawn> texts;
    save (paint (*view_, texts), "sheet-alone");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
}

TEST_P (LayoutTest, TheKnobsOfTheTremulantHaveRoom)
{
    open();
    auto* const knobs = view_->rail().findTremulantRow ("Tremulant");
    ASSERT_NE (knobs, nullptr);
    knobs->rate().takeText ("16.66"); // the longest texts
    knobs->depth().takeText ("88.8 %");
    knobs->depth().grabKeyboardFocus(); // brings it into sight
    std::vector<Lettering::Drawn> texts;
    save (paint (*view_, texts), "tremulant");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
    for (const auto* text : { "rate", "16.7 Hz", "depth", "88.8 %" })
        EXPECT_TRUE (std::ranges::any_of (texts, [&] (const auto& drawn) { return drawn.text == text; })) << text;
}

TEST_P (LayoutTest, TheNameOfANodeIsTypedInSight)
{
    open();
    auto& schematic = view_->sheet().schematic();
    schematic.setProbe ("t");
    schematic.beginNodeRenaming();
    std::vector<Lettering::Drawn> texts;
    save (paint (*view_, texts), "node-name");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
    const auto isEditor = [] (auto* child) { return dynamic_cast<juce::TextEditor*> (child) != nullptr; };
    const auto editor = std::ranges::find_if (schematic.getChildren(), isEditor);
    ASSERT_NE (editor, schematic.getChildren().end());
    EXPECT_TRUE (isWhollySeen (**editor));
}

TEST_P (LayoutTest, APhraseThatPlaysHasRoom)
{
    open();
    processor_.deck().play ({ .keys = { { 0.0, 60, true }, { 700.0, 60, false } }, .seconds = 700.0 });
    play (0.2);
    view_->tick();
    Telemetry telemetry;
    telemetry.limiterReductionDb = 12.34; // as when a whole organ is played
    view_->level().show (telemetry);
    std::vector<Lettering::Drawn> texts;
    save (paint (*view_, texts), "phrase");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
    EXPECT_TRUE (std::ranges::any_of (texts, [] (const auto& drawn) { return drawn.text == "0:00 of 11:40"; }));
}

TEST_P (LayoutTest, ACardAloneHasRoom)
{
    session_.open (preset ("Krummhorn8.json"));
    open();
    std::vector<Lettering::Drawn> texts;
    save (paint (*view_, texts), "card");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
}

TEST_P (LayoutTest, FilesHeldOverTheWindowHaveRoom)
{
    open();
    view_->fileDragEnter ({ "/home/Organ of the school, as found.json" }, 0, 0);
    std::vector<Lettering::Drawn> texts;
    save (paint (*view_, texts), "drop");
    expectTextsHaveRoom (texts);
}

INSTANTIATE_TEST_SUITE_P (Sizes, LayoutTest, testing::ValuesIn (windowCases()), nameOf);

} // namespace stopwright
