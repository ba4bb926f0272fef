// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchFixture.h"
#include "Bench/Lettering.h"
#include "Units/Decibels.h"

namespace stopwright
{

namespace
{

using LevelPanelTest = BenchFixture;

} // namespace

TEST_F (LevelPanelTest, StartsAtOrBelowMinusThirty)
{
    openView();
    EXPECT_LE (processor_.engine().listeningLevelDb(), -30.0);
    processor_.engine().key (60, true);
    EXPECT_NEAR (toDecibels (settledRms()), -30.0, 1.0);
}

TEST_F (LevelPanelTest, ArrowKeysMoveTheSound)
{
    auto& panel = openView().level();
    processor_.engine().key (60, true);
    const double before = settledRms();
    for (int press = 0; press < 6; ++press)
        panel.keyPressed (juce::KeyPress (juce::KeyPress::downKey));
    EXPECT_NEAR (processor_.engine().listeningLevelDb(), -36.0, 1e-9);
    EXPECT_NEAR (toDecibels (settledRms() / before), -6.0, 0.1);
}

TEST_F (LevelPanelTest, AClickFarUpTheScaleIsOneStepOnly)
{
    auto& panel = openView().level();
    const juce::Point<int> farUp (panel.getWidth() - 60, panel.getHeight() / 2);
    mousePress (panel, farUp);
    mouseRelease (panel, farUp);
    EXPECT_NEAR (processor_.engine().listeningLevelDb(), -29.0, 1e-9);
}

TEST_F (LevelPanelTest, CannotBeRaisedPastItsLimit)
{
    auto& panel = openView().level();
    panel.setLevelDb (20.0);
    EXPECT_EQ (processor_.engine().listeningLevelDb(), Engine::highestListeningLevelDb);
}

TEST_F (LevelPanelTest, AboveTheSafeRangeItSaysSo)
{
    auto& panel = openView().level();
    const auto texts = [&]
    {
        juce::StringArray drawn;
        Lettering::observer = [&] (const Lettering::Drawn& text) { drawn.add (text.text); };
        panel.createComponentSnapshot (panel.getLocalBounds());
        Lettering::observer = {};
        return drawn;
    };
    for (const auto* word : { "Listening level", "level", "output", "safe to start" })
        EXPECT_TRUE (texts().contains (word)) << word;
    panel.keyPressed (juce::KeyPress (juce::KeyPress::upKey));
    EXPECT_TRUE (texts().contains ("above safe start"));
    EXPECT_TRUE (panel.getDescription().contains ("above the safe start")) << panel.getDescription();
    panel.keyPressed (juce::KeyPress (juce::KeyPress::pageDownKey));
    EXPECT_NEAR (processor_.engine().listeningLevelDb(), -34.0, 1e-9);
    EXPECT_TRUE (texts().contains ("safe to start"));
}

TEST_F (LevelPanelTest, WhatTheLimiterSaysHasRoom)
{
    auto& panel = openView().level();
    for (const double reductionDb : { 0.3, 4.0, 18.0 })
    {
        Telemetry telemetry;
        telemetry.limiterReductionDb = reductionDb;
        panel.show (telemetry);
        bool isDrawn = false;
        Lettering::observer = [&] (const Lettering::Drawn& text)
        {
            if (text.text != panel.limiterText())
                return;
            isDrawn = true;
            EXPECT_TRUE (text.area.contains (text.needed)) << text.text;
        };
        panel.createComponentSnapshot (panel.getLocalBounds());
        Lettering::observer = {};
        EXPECT_TRUE (isDrawn) << panel.limiterText();
    }
}

TEST_F (LevelPanelTest, TheLimiterSpeaksInWords)
{
    auto& panel = openView().level();
    EXPECT_EQ (panel.limiterText(), "limiter idle");
    Telemetry telemetry;
    telemetry.limiterReductionDb = 4.0;
    panel.show (telemetry);
    EXPECT_EQ (panel.limiterText(), "limiting 4 dB");
    telemetry.limiterReductionDb = 7.84;
    panel.show (telemetry);
    EXPECT_EQ (panel.limiterText(), "limiting 8 dB");
    telemetry.silencedByFault = true;
    panel.show (telemetry);
    EXPECT_EQ (panel.limiterText(), "silenced: fault");
}

} // namespace stopwright
