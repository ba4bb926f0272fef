// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchWindow.h"
#include "Bench/BenchFixture.h"
#include "Bench/BlindTestPanel.h"

#include <set>

namespace stopwright
{

namespace
{

class BenchWindowTest : public BenchFixture
{
protected:
    juce::Rectangle<int> boundsWhenOpened()
    {
        BenchWindow window (session_, *settings_, audio_);
        runMessages (50);
        return window.getBounds();
    }

    static juce::Rectangle<int> screen() { return juce::Desktop::getInstance().getDisplays().displays[0].userArea; }

    AudioHost audio_ { processor_ };
};

} // namespace

TEST_F (BenchWindowTest, ItOpensWhereItWasClosed)
{
    {
        BenchWindow window (session_, *settings_, audio_);
        runMessages (50);
        window.setBounds (30, 40, 1000, 700);
        runMessages (50);
    }
    EXPECT_EQ (boundsWhenOpened(), juce::Rectangle<int> (30, 40, 1000, 700));
}

TEST_F (BenchWindowTest, TabGoesOnFromTheKeyboardAndRound)
{
    settings_->acknowledgeCautions();
    session_.open (preset ("LarkfieldOrgan.json"));
    BenchWindow window (session_, *settings_, audio_);
    runMessages (50);
    auto& keyboard = window.view().playBar().keyboard();
    keyboard.grabKeyboardFocus();
    std::set<juce::Component*> reached;
    for (int step = 0; step < 80; ++step)
    {
        window.getPeer()->handleKeyPress (juce::KeyPress (juce::KeyPress::tabKey));
        window.view().tick();
        auto* const focused = juce::Component::getCurrentlyFocusedComponent();
        ASSERT_NE (focused, nullptr);
        if (focused == &keyboard)
            break;
        EXPECT_TRUE (reached.insert (focused).second) << focused->getTitle();
    }
    EXPECT_TRUE (keyboard.hasKeyboardFocus (false));
    EXPECT_GE (reached.size(), 20U);
}

TEST_F (BenchWindowTest, TabLeadsRoundThePageThatIsUp)
{
    settings_->acknowledgeCautions();
    session_.open (preset ("LarkfieldOrgan.json"));
    session_.beginSecondTrial();
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, 1e3);
    BenchWindow window (session_, *settings_, audio_);
    runMessages (50);
    window.view().showBlindTest();
    runMessages (50);
    auto* const panel = findWithin<BlindTestPanel> (window.view());
    ASSERT_NE (panel, nullptr);
    ASSERT_TRUE (panel->listenTo ('A').hasKeyboardFocus (false));
    std::set<juce::Component*> reached;
    for (int step = 0; step < 12 && reached.insert (juce::Component::getCurrentlyFocusedComponent()).second; ++step)
    {
        window.getPeer()->handleKeyPress (juce::KeyPress (juce::KeyPress::tabKey));
        window.view().tick();
    }
    EXPECT_TRUE (reached.contains (&panel->listenTo ('X')));
    EXPECT_TRUE (reached.contains (&panel->say ('B')));
    EXPECT_TRUE (reached.contains (&panel->finish()));
    EXPECT_TRUE (panel->listenTo ('A').hasKeyboardFocus (false)) << "round";
    EXPECT_FALSE (reached.contains (&window.view().playBar().keyboard()));
}

TEST_F (BenchWindowTest, ItComesOntoTheScreensThereAre)
{
    for (const auto* state : { "5000 4000 1000 700", "-900 -700 1000 700", "600 500 1100 900", "0 0 6000 5000" })
    {
        settings_->setWindowState (state);
        EXPECT_TRUE (screen().contains (boundsWhenOpened())) << state;
    }
    settings_->setWindowState ("no numbers at all");
    EXPECT_TRUE (screen().contains (boundsWhenOpened()));
}

} // namespace stopwright
