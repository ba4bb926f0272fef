// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchFixture.h"

#include <cmath>

namespace stopwright
{

namespace
{

using HarmonicPanelTest = BenchFixture;

Card squareIntoDivider()
{
    Card card;
    card.taps.push_back ({ "W1", Wave {}, Footage {}, 2.0, 0.0, "in", 1 });
    card.parts.push_back ({ "R1", { "in", "out" }, Resistor { 10e3 }, 0.0 });
    card.parts.push_back ({ "R2", { "out", "0" }, Resistor { 10e3 }, 0.0 });
    card.output = std::string ("out");
    return card;
}

} // namespace

TEST (HarmonicPicture, ASquareLacksItsEvenPartials)
{
    const auto card = squareIntoDivider();
    const auto picture = harmonicPictureOf (card, keySourceForCardAlone (card), 60);
    ASSERT_TRUE (picture.refusal.empty());
    ASSERT_GE (picture.bars.size(), 9u);
    EXPECT_EQ (picture.strongest, 0);
    EXPECT_NEAR (picture.lossDb, -6.0206, 1e-3);
    for (const auto& bar : picture.bars)
    {
        const bool isEven = std::lround (bar.harmonic) % 2 == 0;
        EXPECT_EQ (bar.isAbsent, isEven) << bar.harmonic;
        if (! isEven) // a square's partials fall as 1/n (Fourier), and a divider of resistors keeps them
        {
            EXPECT_NEAR (bar.sourceDb, -20.0 * std::log10 (bar.harmonic), 1e-6);
            EXPECT_NEAR (bar.resultDb, bar.sourceDb, 1e-6);
        }
    }
}

TEST (HarmonicPicture, AnUnsoundCardIsRefusedInWords)
{
    auto card = squareIntoDivider();
    card.output = std::string ("nowhere");
    const auto picture = harmonicPictureOf (card, keySourceForCardAlone (card), 60);
    EXPECT_TRUE (picture.bars.empty());
    EXPECT_GT (picture.refusal.size(), 10u);
}

TEST_F (HarmonicPanelTest, FollowsTheKeyAndTheKnobs)
{
    auto& panel = openView().harmonics();
    EXPECT_EQ (panel.picture().key, 60);
    const double before = panel.picture().bars.back().resultPeakVolts;

    panel.setKey (48);
    panel.finish();
    EXPECT_EQ (panel.picture().key, 48);
    EXPECT_NEAR (panel.picture().keyHz, 130.81, 0.2);

    panel.setKey (60);
    cell ("C4").takeText ("8n2"); // ten times the capacitor across the output
    panel.finish();
    EXPECT_LT (panel.picture().bars.back().resultPeakVolts, 0.5 * before);
}

TEST_F (HarmonicPanelTest, TellsTheNumbersOfAPartial)
{
    auto& panel = openView().harmonics();
    EXPECT_TRUE (panel.readingText().startsWith ("Strongest: partial ")) << panel.readingText();
    panel.choosePartial (1);
    EXPECT_TRUE (panel.readingText().startsWith ("Partial 2, 523 Hz")) << panel.readingText();
    panel.keyPressed (juce::KeyPress (juce::KeyPress::rightKey));
    EXPECT_TRUE (panel.readingText().startsWith ("Partial 3, 785 Hz")) << panel.readingText();
    panel.choosePartial (9999);
    EXPECT_TRUE (panel.readingText().startsWith ("Strongest")) << panel.readingText();
}

} // namespace stopwright
