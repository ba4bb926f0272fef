// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchWindow.h"
#include "Bench/BenchFixture.h"

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
