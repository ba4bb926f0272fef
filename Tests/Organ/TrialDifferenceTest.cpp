// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/TrialDifference.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <ostream>

namespace stopwright
{
namespace
{

Card smallCard()
{
    Card card;
    card.name = "Reed";
    Tap tap;
    tap.name = "W1";
    tap.node = "in";
    card.taps = { tap };
    card.parts = { { .name = "R1", .nodes = { "in", "t" }, .value = Resistor { 47e3 } },
                   { .name = "C1", .nodes = { "t", "0" }, .value = Capacitor { 6.8e-9 } },
                   { .name = "L1", .nodes = { "t", "m" }, .value = Inductor { 1.0, 150.0, 0.0 } },
                   { .name = "P1", .nodes = { "m", "w", "0" }, .value = Potentiometer { 100e3, 0.57 } },
                   { .name = "S1", .nodes = { "m", "0" }, .value = Switch {} },
                   { .name = "U1", .nodes = { "w", "o", "o" }, .value = OpAmp {} },
                   { .name = "D1", .nodes = { "o", "0" }, .value = Diode { 2.52e-9, 1.75, 0.0 } },
                   { .name = "Q1", .nodes = { "v", "o", "e" }, .value = Npn { { 1e-14, 200.0, 1.0, 0.0, {} } } },
                   { .name = "V1", .nodes = { "v", "0" }, .value = Supply { 9.0, 0.0 } } };
    card.output = "t";
    return card;
}

struct Edit
{
    std::function<void (Card&)> make;
    std::string words;

    friend std::ostream& operator<< (std::ostream& out, const Edit& edit) { return out << edit.words; }
};

template <typename Kind>
Kind& valueIn (Card& card, std::size_t part)
{
    return std::get<Kind> (card.parts[part].value);
}

class TrialDifferenceOf : public testing::TestWithParam<Edit>
{};

TEST_P (TrialDifferenceOf, AnEditIsToldInWords)
{
    const Card a = smallCard();
    Card b = a;
    GetParam().make (b);
    EXPECT_EQ (differenceWords (trialDifferences (a, b)), GetParam().words);
    EXPECT_EQ (trialDifferences (a, a).size(), 0U);
    EXPECT_EQ (trialDifferences (b, b).size(), 0U);
}

const std::vector<Edit> partEdits {
    { [] (Card& b) { valueIn<Resistor> (b, 0).ohms = 4.7e3; }, "R1 47k / 4k7" },
    { [] (Card& b) { valueIn<Capacitor> (b, 1).farads = 8.2e-9; }, "C1 6n8 / 8n2" },
    { [] (Card& b) { valueIn<Capacitor> (b, 1).leakOhms = 10e6; }, "C1 leak none / 10M" },
    { [] (Card& b) { valueIn<Inductor> (b, 2).windingOhms = 200.0; }, "L1 winding resistance 150 / 200" },
    { [] (Card& b) { valueIn<Inductor> (b, 2).selfFarads = 100e-12; }, "L1 self-capacitance none / 100p" },
    { [] (Card& b) { valueIn<Potentiometer> (b, 3).position = 0.6; }, "P1 position 57 % / 60 %" },
    { [] (Card& b) { valueIn<Potentiometer> (b, 3).taper = Taper::log; }, "P1 taper linear / log" },
    { [] (Card& b) { valueIn<Switch> (b, 4).closed = true; }, "S1 open / closed" },
    { [] (Card& b) { valueIn<OpAmp> (b, 5).gainBandwidthHz = 1e6; }, "U1 gain-bandwidth product ideal / 1M Hz" },
    { [] (Card& b) { valueIn<OpAmp> (b, 5).openLoopDb = 100.0; }, "U1 open-loop gain ideal / 100 dB" },
    { [] (Card& b) {
         valueIn<OpAmp> (b, 5).rails = { -9.0, 9.0 };
     },
      "U1 rails none / -9 V and 9 V" },
    { [] (Card& b) { valueIn<Diode> (b, 6).seriesOhms = 10.0; }, "D1 series resistance none / 10" },
    { [] (Card& b) { valueIn<Npn> (b, 7).forwardBeta = 300.0; }, "Q1 forward beta 200 / 300" },
    { [] (Card& b) { valueIn<Npn> (b, 7).earlyVolts = 100.0; }, "Q1 Early voltage none / 100 V" },
    { [] (Card& b) { valueIn<Supply> (b, 8).volts = 12.0; }, "V1 9 V / 12 V" },
    { [] (Card& b) { b.parts[0].value = Capacitor { 10e-9 }; }, "R1 resistor 47k / capacitor 10n" },
    { [] (Card& b) {
         b.parts[0].nodes = { "in", "m" };
     },
      "R1 leads in, t / in, m" },
    { [] (Card& b) {
         b.parts[6].nodes = { "0", "o" };
     },
      "D1 leads o, 0 / 0, o" },
    { [] (Card& b) { b.parts[0].tolerance = 0.05; }, "R1 tolerance none / 5 %" },
};

const std::vector<Edit> wiringEdits {
    { [] (Card& b) { b.parts.erase (b.parts.begin()); }, "R1 only in A" },
    { [] (Card& b) {
         b.parts.push_back ({ .name = "R7", .nodes = { "m", "0" }, .value = Resistor { 10e3 } });
     },
      "R7 only in B" },
    { [] (Card& b) { b.output = "m"; }, "output moved from t to m" },
    { [] (Card& b) { b.taps.clear(); }, "W1 only in A" },
    { [] (Card& b) { b.taps[0].wave = { .kind = WaveKind::staircase, .ranks = 4 }; },
      "W1 wave square / staircase of 4 ranks" },
    { [] (Card& b) { b.taps[0].wave.duty = 0.3; }, "W1 wave square / square, duty 0.3" },
    { [] (Card& b) { b.taps[0].wave = { .kind = WaveKind::outphased, .outphaseWeight = 0.46 }; },
      "W1 wave square / outphased by 0.46" },
    { [] (Card& b) { b.taps[0].footage = Footage::parse ("2 2/3"); }, "W1 footage 8 ft / 2 2/3 ft" },
    { [] (Card& b) { b.taps[0].voltsPeakToPeak = 0.5; }, "W1 level 1 V peak to peak / 500m V peak to peak" },
    { [] (Card& b) { b.taps[0].sourceOhms = 1e3; }, "W1 source resistance none / 1k" },
    { [] (Card& b) { b.taps[0].node = "t"; }, "W1 node in / t" },
    { [] (Card& b) { b.taps[0].polarity = -1; }, "W1 polarity +1 / -1" },
    { [] (Card& b)
      {
          valueIn<Capacitor> (b, 1).farads = 8.2e-9;
          b.output = "m";
      },
      "C1 6n8 / 8n2; output moved from t to m" },
};

const std::vector<Edit> noEdits {
    { [] (Card& b) { b.name = "Another"; }, "no difference" },
    { [] (Card& b) { b.note = "Brighter."; }, "no difference" },
    { [] (Card& b) { std::ranges::reverse (b.parts); }, "no difference" },
    { [] (Card& b) {
         b.parts[0].nodes = { "t", "in" };
     },
      "no difference" },
    { [] (Card& b) { b.taps[0].wave.ranks = 2; }, "no difference" }, // of a staircase only
};

INSTANTIATE_TEST_SUITE_P (Parts, TrialDifferenceOf, testing::ValuesIn (partEdits));
INSTANTIATE_TEST_SUITE_P (Wiring, TrialDifferenceOf, testing::ValuesIn (wiringEdits));
INSTANTIATE_TEST_SUITE_P (Unheard, TrialDifferenceOf, testing::ValuesIn (noEdits));

TEST (TrialDifference, HasTheValuesOfBothForATable)
{
    Card b = smallCard();
    b.parts.erase (b.parts.begin());
    valueIn<Capacitor> (b, 0).farads = 8.2e-9;
    const auto differences = trialDifferences (smallCard(), b);
    ASSERT_EQ (differences.size(), 2U);
    EXPECT_EQ (differences[0], (TrialDifference { TrialDifference::Kind::missing, "R1", "resistor 47k", "" }));
    EXPECT_EQ (differences[1], (TrialDifference { TrialDifference::Kind::changed, "C1", "6n8", "8n2" }));
}

// The last bit of a value is a difference, and shows.
TEST (TrialDifference, ShowsTheSmallestStep)
{
    Card b = smallCard();
    valueIn<Resistor> (b, 0).ohms = std::nextafter (47e3, 1e9);
    const auto differences = trialDifferences (smallCard(), b);
    ASSERT_EQ (differences.size(), 1U);
    EXPECT_NE (differences[0].inA, differences[0].inB);
}

} // namespace
} // namespace stopwright
