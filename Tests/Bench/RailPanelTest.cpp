// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchFixture.h"
#include "Bench/BringIntoSight.h"
#include "Bench/Lettering.h"
#include "Organ/RailEdit.h"

#include <fstream>
#include <sstream>
#include <utility>

namespace stopwright
{

namespace
{

class RailPanelTest : public BenchFixture
{
protected:
    RailRow& row (const juce::String& name, RailRow::Sign sign = RailRow::Sign::contact)
    {
        auto* found = view_->rail().findRow (name, sign);
        if (found == nullptr)
            throw std::runtime_error ("no line for " + name.toStdString());
        return *found;
    }

    void click (RailRow& line, juce::Point<int> place)
    {
        bringIntoSight (line, line.getLocalBounds());
        mousePress (line, place);
        mouseRelease (line, place);
    }

    void click (const juce::String& name) { click (row (name), { 40, 8 }); }

    static juce::TextButton* button (juce::Component& within, const juce::String& text)
    {
        for (auto* child : within.getChildren())
        {
            auto* found = dynamic_cast<juce::TextButton*> (child);
            if (found != nullptr && found->getButtonText() == text)
                return found;
        }
        return nullptr;
    }

    /// What is painted in a line, in order.
    static juce::StringArray textsOf (RailRow& line)
    {
        juce::StringArray texts;
        Lettering::observer = [&] (const Lettering::Drawn& drawn) { texts.add (drawn.text); };
        line.createComponentSnapshot (line.getLocalBounds());
        Lettering::observer = {};
        return texts;
    }

    bool sounds() { return settledRms (0.1) > 1e-4; }

    const juce::KeyPress up { juce::KeyPress::upKey };
    const juce::KeyPress down { juce::KeyPress::downKey };
    const juce::KeyPress right { juce::KeyPress::rightKey };
    const juce::KeyPress space { juce::KeyPress::spaceKey };
};

} // namespace

TEST_F (RailPanelTest, ShowsWhatIsDrawnInHandAndProposed)
{
    openView();
    EXPECT_TRUE (view_->rail().isVisible());
    const auto& inHand = row ("Krummhorn 8").face();
    EXPECT_TRUE (inHand.isOn);
    EXPECT_TRUE (inHand.isInHand);
    EXPECT_EQ (inHand.note, "in hand, proposed");
    EXPECT_EQ (row ("Krummhorn 8").getDescription(), "drawn, in hand, proposed, bus Upper reeds");
    EXPECT_FALSE (row ("Oboe 8").face().isOn);
    EXPECT_EQ (row ("Oboe 8").getDescription(), "retired, bus Upper reeds");
    EXPECT_EQ (row ("Upper to Lower").getDescription(), "retired");
    EXPECT_TRUE (row ("Oboe 8").getTooltip().contains ("Upper reeds"));
    EXPECT_FALSE (row ("Rotary fast").face().isOn);
}

TEST_F (RailPanelTest, ALineHasItsBusBesideTheName)
{
    openView (1680, 1050);
    EXPECT_EQ (textsOf (row ("Oboe 8")), (juce::StringArray { "Oboe 8", "reeds" }));
    EXPECT_EQ (textsOf (row ("Sub bass 16")).size(), 2);
    EXPECT_EQ (row ("Sub bass 16").face().bus, "Lower flutes");
    EXPECT_EQ (textsOf (row ("Upper to Lower")), (juce::StringArray { "Upper to Lower" }));
    session_.edit ("moved", [] (BenchWork& work)
                   { work.instrument = moveStopToBus (std::move (*work.instrument), "Oboe 8", "Upper flutes"); });
    EXPECT_EQ (textsOf (row ("Oboe 8")), (juce::StringArray { "Oboe 8", "flutes" }));
    EXPECT_EQ (row ("Oboe 8").getDescription(), "retired, bus Upper flutes");
    EXPECT_TRUE (row ("Oboe 8").getTooltip().contains ("to the bus Upper flutes"));
}

TEST_F (RailPanelTest, AClickDrawsAndRetires)
{
    openView();
    processor_.engine().key (60, true);
    EXPECT_TRUE (sounds());
    click ("Krummhorn 8");
    EXPECT_FALSE (row ("Krummhorn 8").face().isOn);
    EXPECT_FALSE (sounds());
    click ("Oboe 8");
    EXPECT_TRUE (row ("Oboe 8").face().isOn);
    EXPECT_TRUE (sounds());
    EXPECT_EQ (session_.card().name, "Krummhorn 8"); // still in hand
}

TEST_F (RailPanelTest, TheMarkTakesAStopInHandAndDrawsNothing)
{
    openView();
    auto& oboe = row ("Oboe 8");
    click (oboe, oboe.markArea().getCentre());
    EXPECT_EQ (session_.card().name, "Oboe 8");
    EXPECT_TRUE (oboe.face().isInHand);
    EXPECT_FALSE (oboe.face().isOn);
    EXPECT_FALSE (row ("Krummhorn 8").face().isInHand);
    EXPECT_TRUE (row ("Krummhorn 8").face().isOn);
}

TEST_F (RailPanelTest, TakingAnotherStopKeepsWhatWasChanged)
{
    openView();
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, 22e3);
    auto& oboe = row ("Oboe 8");
    click (oboe, oboe.markArea().getCentre());
    EXPECT_FALSE (view_->isPageUp());
    EXPECT_EQ (session_.card().name, "Oboe 8");
    EXPECT_TRUE (session_.document().isUnsaved());
}

TEST_F (RailPanelTest, KeysMoveDrawAndTakeInHand)
{
    openView();
    row ("Krummhorn 8").grabKeyboardFocus();
    row ("Krummhorn 8").keyPressed (up);
    EXPECT_TRUE (row ("Stopped flute 8").getWantsKeyboardFocus());
    EXPECT_FALSE (row ("Krummhorn 8").getWantsKeyboardFocus()); // the Tab key stops once in the list
    row ("Stopped flute 8").keyPressed (space);
    EXPECT_TRUE (row ("Stopped flute 8").face().isOn);
    row ("Stopped flute 8").keyPressed (juce::KeyPress (juce::KeyPress::returnKey));
    EXPECT_FALSE (row ("Stopped flute 8").face().isOn);
    row ("Stopped flute 8").keyPressed (right);
    EXPECT_EQ (session_.card().name, "Stopped flute 8");
    EXPECT_FALSE (row ("Stopped flute 8").keyPressed (juce::KeyPress ('e', {}, 'e'))); // letters are played
    for (int line = 0; line < 100; ++line)
        row ("Stopped flute 8").keyPressed (up);
    for (int line = 0; line < 100; ++line)
        row ("Stopped flute 8").keyPressed (down); // past the end there is nothing
    EXPECT_EQ (session_.card().name, "Stopped flute 8");
}

TEST_F (RailPanelTest, RetireAllRetiresStopsAndCouplers)
{
    openView();
    click ("Upper to Lower");
    click ("Tremulant");
    EXPECT_TRUE (row ("Upper to Lower").face().isOn);
    button (view_->rail(), "Retire all")->onClick();
    EXPECT_FALSE (row ("Upper to Lower").face().isOn);
    EXPECT_FALSE (row ("Krummhorn 8").face().isOn);
    EXPECT_TRUE (row ("Tremulant").face().isOn); // no tablet
}

TEST_F (RailPanelTest, ALampStaysLitUntilItIsClicked)
{
    openView();
    auto& rail = view_->rail();
    ASSERT_GE (rail.clips().stageCount(), 2);
    EXPECT_EQ (rail.clipText(), "no stage clipped");
    Telemetry telemetry;
    telemetry.clips = 0b11;
    rail.show (telemetry);
    telemetry.clips = 0;
    rail.show (telemetry);
    EXPECT_EQ (rail.clipText(), "2 stages clipped");

    const auto first = juce::String (rail.clips().name (0)).upToLastOccurrenceOf (": ", false, false);
    auto& lamp = row (first, RailRow::Sign::lamp);
    EXPECT_TRUE (lamp.face().isOn);
    EXPECT_TRUE (lamp.face().note.endsWith (": clipped")) << lamp.face().note;
    click (lamp, { 40, 8 });
    EXPECT_FALSE (lamp.face().isOn);
    EXPECT_TRUE (lamp.face().note.endsWith ("not clipped")) << lamp.face().note;
    EXPECT_EQ (rail.clipText(), "1 stage clipped");
    rail.lamps().onClick();
    EXPECT_EQ (rail.clipText(), "no stage clipped");
}

TEST_F (RailPanelTest, AStageThatIsDrivenTooHardLightsItsLamp)
{
    openView();
    view_->tick();
    EXPECT_EQ (view_->rail().clips().litCount(), 0);
    session_.turn ({ CardKnob::Place::tapLevel, session_.card().taps.front().name, KnobKind::value }, 100.0);
    for (int key = 48; key < 72; ++key)
        processor_.engine().key (key, true);
    play (0.5);
    view_->tick();
    EXPECT_GE (view_->rail().clips().litCount(), 1);
}

TEST_F (RailPanelTest, ABlankTabletIsShownAsOneAndSaysWhy)
{
    std::ifstream in (preset ("LarkfieldOrgan.json"));
    std::ostringstream text;
    text << in.rdbuf();
    in.close();
    auto changed = text.str();
    const std::string named = R"("card": "Oboe8.json", )";
    changed.erase (changed.find (named), named.size());
    std::ofstream (preset ("LarkfieldOrgan.json")) << changed;
    session_.open (preset ("LarkfieldOrgan.json"));

    openView();
    auto& oboe = row ("Oboe 8");
    EXPECT_EQ (oboe.face().note, "blank");
    EXPECT_FALSE (oboe.face().isUsable);
    EXPECT_FALSE (oboe.face().canBeTaken);
    click ("Oboe 8");
    EXPECT_FALSE (oboe.face().isOn);
    EXPECT_TRUE (view_->messages().sentence().contains ("blank")) << view_->messages().sentence();
}

TEST_F (RailPanelTest, TheMixingResistorOfTheStopInHandIsAKnob)
{
    openView();
    auto* knob = view_->place().mixing();
    ASSERT_NE (knob, nullptr);
    EXPECT_TRUE (knob->takeText ("82k"));
    EXPECT_EQ (session_.document().stopInHand()->mixingOhms, 82e3);
    knob->keyPressed (up);
    EXPECT_EQ (session_.document().stopInHand()->mixingOhms, 100e3);
    knob->keyPressed (up);
    knob->returnToSaved();
    EXPECT_EQ (session_.document().stopInHand()->mixingOhms, 100e3);
    EXPECT_FALSE (knob->takeText ("4x7"));
    session_.open (preset ("Oboe8.json"));
    EXPECT_EQ (view_->place().mixing(), nullptr);
}

TEST_F (RailPanelTest, WithACardAloneThereIsNoRail)
{
    openView();
    const int before = view_->sheet().getWidth();
    session_.open (preset ("Oboe8.json"));
    EXPECT_FALSE (view_->rail().isShowing());
    EXPECT_GT (view_->sheet().getWidth(), before);
    EXPECT_EQ (view_->rail().findRow ("Oboe 8"), nullptr);
    session_.open (preset ("LarkfieldOrgan.json"));
    EXPECT_TRUE (view_->rail().isVisible());
    EXPECT_NE (view_->rail().findRow ("Oboe 8"), nullptr);
}

} // namespace stopwright
