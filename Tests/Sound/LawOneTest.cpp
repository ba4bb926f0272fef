// SPDX-License-Identifier: GPL-3.0-or-later
//
// What is heard is what is drawn: the partials measured in rendered volts are the ones that Fourier series and circuit
// analysis give.
#include "Sound/OfflineRender.h"
#include "Sound/TestCards.h"
#include "Study/HarmonicTable.h"
#include "Support/Spectrum.h"
#include "Support/Tolerances.h"
#include "Units/Decibels.h"
#include "Units/Pitch.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>

namespace stopwright
{
namespace
{

using namespace test;

constexpr double rateHz = 48000.0;
constexpr double highestHz = 10000.0;

/// Volts in two seconds of one key, as `render` writes them.
std::vector<double> twoSeconds (const Card& card, int key)
{
    std::vector<double> samples;
    renderOffline (card, keySourceForCardAlone (card), { heldKeys ({ key }, 2.0), rateHz, RenderScale::volts },
                   [&] (std::span<const float> block) { samples.insert (samples.end(), block.begin(), block.end()); });
    return samples;
}

/// One partial, rendered re computed.
struct Deviation
{
    double frequencyHz = 0.0;
    double db = 0.0;
};

/// Every partial of a key that the bar is for. The window begins past the attack; its side lobes keep the other partials
/// out to better than 1e-5.
std::vector<Deviation>
    deviations (const Card& card, int key, const std::vector<double>& samples, double sampleRateHz = rateHz)
{
    const auto steady = std::span (samples).last (2 * samples.size() / 3);
    std::vector<Deviation> list;
    for (const HarmonicRow& row : harmonicTable (card, keySourceForCardAlone (card), key, highestHz))
    {
        if (row.outputDb < tolerance::renderedFloorDb)
            continue;
        const double peak = std::abs (windowedPartial (steady, row.frequencyHz, sampleRateHz));
        list.push_back ({ row.frequencyHz, toDecibels (peak / row.outputPeakVolts) });
    }
    return list;
}

Deviation worstOf (const std::vector<Deviation>& list, double upToHz = highestHz)
{
    Deviation worst;
    for (const Deviation& deviation : list)
        if (deviation.frequencyHz <= upToHz && std::abs (deviation.db) > std::abs (worst.db))
            worst = deviation;
    return worst;
}

class LawOne : public testing::TestWithParam<std::string>
{};

TEST_P (LawOne, RenderedPartialsAreTheComputedOnes)
{
    const Card card = presetCard (GetParam());
    for (const int key : { 36, 48, 60, 72, 84 })
    {
        const auto list = deviations (card, key, twoSeconds (card, key));
        const Deviation worst = worstOf (list);
        std::printf ("%-14s %-2s: %3zu partials, worst %+.4f dB at %.0f Hz\n", GetParam().c_str(),
                     keyName (key).c_str(), list.size(), worst.db, worst.frequencyHz);
        EXPECT_GT (list.size(), 1U);
        EXPECT_LT (std::abs (worst.db), tolerance::renderedLevelDb) << keyName (key) << " at " << worst.frequencyHz;
    }
}

// The live kernel runs at a quarter of that internal rate; the bilinear step then bends the highest partials a little.
// Up to 5 kHz it keeps the same bar. 44.1 kHz has the lowest internal rate of all.
TEST_P (LawOne, TheLiveKernelKeepsItToFiveKilohertz)
{
    constexpr double deviceHz = 44100.0;
    const Card card = presetCard (GetParam());
    for (const int key : { 36, 84 })
    {
        CardVoice voice (card, keySourceForCardAlone (card), { .deviceRateHz = deviceHz });
        const auto list = deviations (card, key, renderVolts (voice, 66150, { { 0, key, true } }), deviceHz);
        const Deviation toFive = worstOf (list, 5000.0);
        const Deviation toTen = worstOf (list);
        std::printf ("live %-14s %-2s: worst to 5 kHz %+.4f dB, to 10 kHz %+.4f dB\n", GetParam().c_str(),
                     keyName (key).c_str(), toFive.db, toTen.db);
        EXPECT_LT (std::abs (toFive.db), tolerance::renderedLevelDb) << keyName (key) << " at " << toFive.frequencyHz;
        EXPECT_LT (std::abs (toTen.db), 1.5 * tolerance::renderedLevelDb)
            << keyName (key) << " at " << toTen.frequencyHz;
    }
}

INSTANTIATE_TEST_SUITE_P (Presets,
                          LawOne,
                          testing::ValuesIn (presetNames()),
                          [] (const auto& instance)
                          {
                              std::string name = instance.param;
                              std::erase (name, '-');
                              return name;
                          });

// The twin: two per cent of level, as the next preferred value of a part would make, is seen.
TEST (LawOneTwin, ASlightlyWrongLevelIsSeen)
{
    auto samples = twoSeconds (presetCard ("Krummhorn8"), 60);
    for (double& sample : samples)
        sample *= 1.024;
    EXPECT_GT (std::abs (worstOf (deviations (presetCard ("Krummhorn8"), 60, samples)).db), tolerance::renderedLevelDb);
}

} // namespace
} // namespace stopwright
