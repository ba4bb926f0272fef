// SPDX-License-Identifier: GPL-3.0-or-later
//
// Whether the pages that are laid over the window have room, at several sizes and lettering scales, and pictures of them.
#include "Bench/AudioPage.h"
#include "Bench/BlindTestPanel.h"
#include "Bench/LayoutFixture.h"
#include "Bench/LeftWorkActions.h"
#include "Organ/RailEdit.h"

#include <algorithm>

namespace stopwright
{

namespace
{

class PageLayoutTest : public LayoutFixture
{
protected:
    /// Paints the window with the page that is up, and looks at every text.
    std::vector<Lettering::Drawn> look (const std::string& what)
    {
        std::vector<Lettering::Drawn> texts;
        save (paint (*view_, texts), what);
        expectTextsHaveRoom (texts);
        expectNoOverlap (*view_);
        return texts;
    }

    static bool hasText (const std::vector<Lettering::Drawn>& texts, const juce::String& part)
    {
        return std::ranges::any_of (texts, [&] (const auto& drawn) { return drawn.text.contains (part); });
    }

    void turn (double ohms) { session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, ohms); }
};

} // namespace

TEST_P (PageLayoutTest, TheCautionsAndASentenceHaveRoom)
{
    open();
    session_.say ("Krummhorn8.json: /parts/3/value: \"4x7\" is no resistance; write for instance 4k7, 47k or 150.");
    view_->begin();
    EXPECT_TRUE (hasText (look ("cautions"), "Before you start"));
}

TEST_P (PageLayoutTest, TheGlossaryHasRoom)
{
    open();
    view_->showGlossary ("retired grounded");
    EXPECT_TRUE (hasText (look ("glossary"), "retired grounded"));
}

TEST_P (PageLayoutTest, TheAudioSetUpHasRoom)
{
    open();
    AudioHost host (processor_);
    auto controls = std::make_unique<AudioPage> (host);
    juce::StringArray names;
    for (int number = 1; number <= AudioPage::mostInputs + 2; ++number)
        names.add ("Keyboard controller, port " + juce::String (number));
    controls->showInputs (names);
    std::vector<SheetPage::Choice> choices;
    choices.push_back ({ "Try again", [] {} });
    choices.push_back ({ "Go on silent", [] {} });
    view_->showPage (std::make_unique<SheetPage> ("No sound device", AudioHost::noDeviceSentence(), std::move (choices),
                                                  std::move (controls), AudioPage::heightWanted()));
    EXPECT_TRUE (hasText (look ("audio"), "Sound system"));
    view_->closePage(); // before the host
}

TEST_P (PageLayoutTest, TheListOfChangesHasRoom)
{
    open();
    session_.edit ("a few", [] (BenchWork& work)
                   { work.instrument = setRetired (std::move (*work.instrument), "Krummhorn 8", WhenRetired::open); });
    session_.turn ({ CardKnob::Place::mixing, "Krummhorn 8", KnobKind::value }, 330e3);
    const auto& buses = session_.document().instrument->keyedBuses;
    session_.edit (
        "another wave", [bus = buses.back().name] (BenchWork& work)
        { work.pair().a = moveTapToKeyedBus (std::move (work.pair().a), "Staircase 8", *work.instrument, bus); });
    const auto bus = juce::String::fromUTF8 (session_.document().instrument->keyedBuses.back().name.c_str());
    view_->showChanges();
    const auto texts = look ("changes");
    EXPECT_TRUE (hasText (texts, "Krummhorn 8"));
    EXPECT_TRUE (hasText (texts, bus)) << "what the tap is taken from is told to its end";
}

TEST_P (PageLayoutTest, TheBlindTestHasRoom)
{
    open();
    session_.beginSecondTrial();
    turn (1e3);
    view_->showBlindTest();
    EXPECT_TRUE (hasText (look ("blind"), "Blind test"));

    auto* const panel = findWithin<BlindTestPanel> (*view_);
    ASSERT_NE (panel, nullptr);
    panel->say ('A').onClick();
    pressEscape (*panel);
    EXPECT_TRUE (hasText (look ("blind-answers"), "Your answers so far would be lost"));
    panel->finish().onClick();
    EXPECT_FALSE (hasText (look ("blind-result"), "not in the card's notes"));
    pressEscape (*panel);
    const auto texts = look ("blind-result-unkept");
    EXPECT_TRUE (hasText (texts, "The result is not in the card's notes yet"));
    EXPECT_TRUE (hasText (texts, panel->resultText()));
}

TEST_P (PageLayoutTest, WorkThatWasLeftHasRoom)
{
    open();
    const juce::File folder ((folder_ / "kept").string());
    {
        WorkKeeper run (session_, folder);
        run.begin();
        turn (1e3);
    }
    WorkKeeper keeper (session_, folder);
    LeftWorkActions left (session_, keeper, *view_);
    left.askAndGoOn ([] {});
    EXPECT_TRUE (hasText (look ("left-work"), "Unsaved work is here"));
    view_->closePage(); // before the actions
}

INSTANTIATE_TEST_SUITE_P (Sizes, PageLayoutTest, testing::ValuesIn (windowCases()), nameOf);

} // namespace stopwright
