// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/HeadroomStudy.h"

#include "Organ/TestOrgan.h"
#include "Study/DividerLevels.h"
#include "Study/RailStudy.h"
#include "Study/ToneLevel.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <string>
#include <vector>

namespace stopwright::test
{

namespace
{

constexpr double unit = 0.5; ///< peak volts of a square of 1 V peak to peak: levels below are counted in these

/// C2 G2 C3 E3 G3 C4 E4 G4 C5 E5.
std::vector<HeldKey> tenNotes()
{
    std::vector<HeldKey> held;
    for (const int key : { 36, 43, 48, 52, 55, 60, 64, 67, 72, 76 })
        held.push_back ({ "Upper", key });
    return held;
}

/// A flat virtual earth of gain 1 with rails of 6 V.
TestOrgan flatOrgan()
{
    MixingBus bus;
    bus.kind = BusKind::virtualEarth;
    bus.feedbackOhms = 47e3;
    bus.rails = SupplyRails { -6.0, 6.0 };
    return emptyOrgan (bus);
}

TestOrgan squaresAt (const std::vector<std::string>& footages)
{
    auto organ = flatOrgan();
    for (const auto& footage : footages)
        organ.add ("Square " + footage, bareCard (footage));
    return organ;
}

TestOrgan staircases()
{
    auto organ = flatOrgan();
    auto card = bareCard();
    card.taps.front().wave.kind = WaveKind::staircase;
    card.taps.front().wave.ranks = 4;
    organ.add ("Staircase", card);
    return organ;
}

std::vector<StageHeadroom> stagesOf (const TestOrgan& organ, const std::vector<HeldKey>& held = tenNotes())
{
    return headroomOf (organ.instrument, organ.cards, { .held = held });
}

PreampStage& addStage (TestOrgan& organ, const std::string& name, StageKind kind)
{
    auto& stages = organ.instrument.preamps.front().stages;
    stages.emplace_back();
    stages.back().name = name;
    stages.back().kind = kind;
    organ.cards.ofStages.front().emplace_back();
    return stages.back();
}

} // namespace

// Peak: every square up at once. Rms: a generator that n stops or keys sound counts n^2; 10, 13, 16 and 19 generators.
// Power-sum guesses are sqrt (10), sqrt (20), sqrt (30) and sqrt (10 x 1.328125). Worked by hand.
TEST (HeadroomStudy, ChordsOfTenNotes)
{
    struct Value
    {
        TestOrgan organ;
        double peak;
        double rms;
        double extraDb;
        double crestDb;
    };

    for (const Value& value : { Value { squaresAt ({ "8" }), 10.0, 3.1623, 0.0, 10.00 },
                                Value { squaresAt ({ "8", "4" }), 20.0, 5.8310, 2.304, 10.71 },
                                Value { squaresAt ({ "16", "8", "4" }), 30.0, 8.1240, 3.424, 11.35 },
                                Value { staircases(), 18.75, 5.0218, 2.785, 11.44 } })
    {
        const auto found = stagesOf (value.organ).front();
        EXPECT_NEAR (found.highestVolts / unit, value.peak, 1e-5 * value.peak);
        EXPECT_NEAR (found.lowestVolts / unit, -value.peak, 1e-5 * value.peak);
        EXPECT_NEAR (found.rmsVolts / unit, value.rms, 1e-4 * value.rms); // partials beyond the 2048th are left out
        EXPECT_NEAR (toDecibels (found.peakVolts() / found.rmsVolts), value.crestDb, 0.006);
        EXPECT_NEAR (found.roomDb, toDecibels (6.0 / (value.peak * unit)), 0.001);
        double guess = 0.0;
        for (const HeldKey& one : tenNotes())
            guess += std::pow (stagesOf (value.organ, { one }).front().rmsVolts, 2);
        EXPECT_NEAR (toDecibels (found.rmsVolts / std::sqrt (guess)), value.extraDb, 0.002);
    }
}

// What one note may have so that ten never clip 6 V: 0.600 and 0.300 V peak of squares, 0.320 V of a staircase's first.
TEST (HeadroomStudy, NeverClipLimitOfANote)
{
    const auto limit = [] (const TestOrgan& organ) { return unit * fromDecibels (stagesOf (organ).front().roomDb); };
    EXPECT_NEAR (limit (squaresAt ({ "8" })), 0.600, 1e-4);
    EXPECT_NEAR (limit (squaresAt ({ "8", "4" })), 0.300, 1e-4);
    EXPECT_NEAR (limit (staircases()), 0.320, 1e-4);
}

// Ten squares: all up or all down 2/1024 of the time, at or beyond 8 of them 22/1024, binomial. Rounded edges make it
// less, by about one part in a hundred.
TEST (HeadroomStudy, ShareOfTimeBeyondTheRails)
{
    auto organ = squaresAt ({ "8" });
    auto& rails = organ.instrument.mixingBuses.front().rails;
    rails = SupplyRails { -9.9 * unit, 7.9 * unit };
    const auto found = stagesOf (organ).front();
    EXPECT_NEAR (found.shareBelow, 1.0 / 1024.0, 0.015 / 1024.0);
    EXPECT_LT (found.shareBelow, 1.0 / 1024.0);
    EXPECT_NEAR (found.shareAbove, 11.0 / 1024.0, 0.015 * 11.0 / 1024.0);
    rails = SupplyRails { -7.9 * unit, 9.9 * unit };
    const auto turned = stagesOf (organ).front();
    EXPECT_NEAR (turned.shareBelow, found.shareAbove, 1e-9) << "squares are symmetrical";
    EXPECT_NEAR (turned.shareAbove, found.shareBelow, 1e-9);
}

// 15.5 squares are exceeded 0.1 % of the time, 9.8 dB above the rms. Worked out separately by enumeration.
TEST (HeadroomStudy, StaircasesAtOnePerMille)
{
    const auto found = stagesOf (staircases()).front();
    EXPECT_NEAR (found.exceededVolts / unit, 15.5, 0.01);
    EXPECT_NEAR (toDecibels (found.exceededVolts / found.rmsVolts), 9.8, 0.05);
    EXPECT_NEAR (found.roomAtShareDb, toDecibels (6.0 / (15.5 * unit)), 0.01);
}

// C3 and C4 on 8 and 4 ft: C3 once, C4 twice, C5 once: sqrt (1 + 4 + 1) = 2.449, where powers would give 2.
TEST (HeadroomStudy, TwoOctavesOfAUnifiedStop)
{
    const auto found = stagesOf (squaresAt ({ "8", "4" }), { { "Upper", 48 }, { "Upper", 60 } }).front();
    EXPECT_NEAR (found.rmsVolts / unit, std::sqrt (6.0), 1e-4);
    EXPECT_NEAR (toDecibels (found.rmsVolts / (2.0 * unit)), 1.761, 0.001);
    EXPECT_NEAR (found.highestVolts / unit, 4.0, 1e-5);
}

// Half an hour of dividers by 478, 379 and 319 from one clock: the whole of what they do, phase-locked throughout. Pitch
// classes taken as independent must agree with it within the 2 % that rounded edges take at the very top, and 0.5 % below.
TEST (HeadroomStudy, AgreesWithDividersFollowedToTheEnd)
{
    const auto followed = dividerLevels (478, 379, 319);
    auto organ = squaresAt ({ "8", "4" });
    auto& tuning = organ.instrument.tuning;
    tuning.kind = TuningKind::topOctave;
    tuning.divisors = { 478, 451, 426, 402, 379, 358, 338, 319, 301, 284, 268, 253 };
    tuning.mutations = MutationSource::borrowed;
    for (const int level : { 2, 6, 10, 12, 14, 16, 18, 20 })
    {
        double share = 0.0;
        for (const auto& [at, part] : followed)
            share += at >= level ? part : 0.0;
        organ.instrument.mixingBuses.front().rails = SupplyRails { -100.0, (level - 0.5) * unit };
        const auto found = stagesOf (organ).front();
        EXPECT_NEAR (found.shareAbove, share, (level > 14 ? 0.02 : 0.01) * share) << level;
    }
}

TEST (HeadroomStudy, OneKeyIsTheSumOfItsPartials)
{
    auto organ = larkfield();
    for (const std::string stop : { "Krummhorn 8", "Oboe 8", "Stopped flute 8" })
    {
        for (StopTablet& tablet : organ.instrument.stops)
            tablet.drawn = tablet.name == stop;
        const auto stages = stagesOf (organ, { { "Upper manual", 60 } });
        ASSERT_EQ (stages.size(), 2U);
        const RailStudy study (organ.instrument, organ.cards);
        for (std::size_t stage = 0; stage < 2; ++stage)
        {
            const auto partials = study.partials (study.findStop (stop), 60, study.asOpened(), stage, 1e6);
            const double rms = toneLevelOf (partials).rmsVolts;
            EXPECT_NEAR (stages[stage].rmsVolts, rms, 2e-4 * rms) << stop << ' ' << stage;
        }
    }
}

TEST (HeadroomStudy, CouplersAndSagCount)
{
    auto organ = squaresAt ({ "8" });
    organ.instrument.couplers = { { "Octave", "Upper", "Upper", 1, true }, { "Down", "Lower", "Upper", 0, true } };
    EXPECT_NEAR (stagesOf (organ, { { "Upper", 60 } }).front().highestVolts / unit, 2.0, 1e-5);
    EXPECT_NEAR (stagesOf (organ, { { "Lower", 60 } }).front().highestVolts / unit, 1.0, 1e-5);
    organ.instrument.couplers.clear();
    KeyedBus keyed;
    keyed.collectorOhms = 220e3;
    keyed.loadOhms = 10e3;
    organ.instrument.keyedBuses.push_back (keyed);
    EXPECT_NEAR (stagesOf (organ).front().highestVolts / unit, 10.0 * 230.0 / 320.0, 1e-4);
}

// 0.7 mA in 10 k beside 4.7 k: 2.238 V and no further down.
TEST (HeadroomStudy, AFollowerClipsWhereItCannotSink)
{
    EXPECT_NEAR (sinkVolts (0.7e-3, 10e3, 4.7e3), 2.238, 0.0005);
    auto organ = squaresAt ({ "8" });
    organ.instrument.mixingBuses.front().rails.reset();
    auto& stage = addStage (organ, "Driver", StageKind::follower);
    stage.loadOhms = 4.7e3;
    stage.rails = SupplyRails { -6.0, 6.0 };
    const auto stages = stagesOf (organ);
    ASSERT_EQ (stages.size(), 2U);
    EXPECT_NEAR (stages[1].limits.low, -2.238, 0.0005);
    EXPECT_EQ (stages[1].limits.high, 6.0);
    EXPECT_NEAR (stages[1].roomDb, toDecibels (2.238 / 5.0), 0.002);
    EXPECT_EQ (firstToClip (stages), 1U);
    EXPECT_GT (stages[1].shareBelow, 0.01);
    EXPECT_EQ (stages[1].shareAbove, 0.0);
    EXPECT_EQ (stages[0].roomDb, std::numeric_limits<double>::infinity());
    EXPECT_TRUE (stages[0].remedies.empty());
}

// Doing what a remedy says leaves the margin that was asked for.
TEST (HeadroomStudy, RemediesRestoreTheMargin)
{
    auto organ = squaresAt ({ "8", "4" });
    addStage (organ, "Gain", StageKind::amplifier).gain = -2.0;
    addStage (organ, "Driver", StageKind::follower).loadOhms = 4.7e3;
    for (PreampStage& stage : organ.instrument.preamps.front().stages)
    {
        stage.coupling = Coupling { 1.0, 47e3 }; // a farad: flat
        stage.rails = SupplyRails { -25.0, 25.0 };
    }
    organ.instrument.preamps.front().stages[0].rails = SupplyRails { -6.0, 8.0 };
    const auto stages = stagesOf (organ);
    ASSERT_EQ (stages.size(), 3U);
    for (std::size_t stage = 0; stage < 3; ++stage)
        for (const HeadroomRemedy& remedy : stages[stage].remedies)
        {
            auto cured = organ;
            auto& preamp = cured.instrument.preamps.front().stages;
            double factor = 1.0;
            if (remedy.kind == HeadroomRemedy::Kind::feedbackOhms)
                cured.instrument.mixingBuses.front().feedbackOhms = remedy.wanted;
            else if (remedy.kind == HeadroomRemedy::Kind::gain)
                preamp[stage - 1].gain = remedy.wanted;
            else if (remedy.kind == HeadroomRemedy::Kind::emitterAmps)
                preamp[stage - 1].emitterAmps = remedy.wanted;
            else
                factor = 47e3 / (47e3 + remedy.wanted);
            EXPECT_NEAR (stagesOf (cured)[stage].roomDb - toDecibels (factor), 3.0, 1e-6)
                << stage << ' ' << static_cast<int> (remedy.kind);
        }
    EXPECT_EQ (stages[0].remedies.size(), 1U);
    EXPECT_EQ (stages[1].remedies.size(), 2U);
    EXPECT_EQ (stages[2].remedies.size(), 1U)
        << "20 V and a margin are beyond rails of 25 V: current alone does not help";
}

TEST (HeadroomStudy, TellsWhatIsMissing)
{
    auto organ = flatOrgan();
    organ.add ("Free", bareCard()).bus.clear();
    EXPECT_THROW (stagesOf (organ), Error);
    auto other = squaresAt ({ "8" });
    EXPECT_THROW (stagesOf (other, { { "Upper", 20 } }), Error);
}

} // namespace stopwright::test
