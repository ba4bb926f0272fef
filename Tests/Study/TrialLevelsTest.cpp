// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/TrialLevels.h"

#include "Organ/TestOrgan.h"
#include "Study/RegistrationSum.h"
#include "Support/Tolerances.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace stopwright::test
{

namespace
{

constexpr double halfDb = 6.020599913279624; // 20 log10 2
const std::vector<HeldKey> noKeys;
const HeldKey c4 { "Upper", 60 };

Card waveCard (WaveKind kind, double volts = 1.0)
{
    Card card = bareCard ("8", volts);
    card.taps[0].wave.kind = kind;
    return card;
}

/// One stop, in hand and drawn.
TestOrgan oneStop (const MixingBus& bus = {})
{
    auto organ = emptyOrgan (bus);
    organ.add ("Stop", bareCard());
    return organ;
}

TrialComparison compared (const TestOrgan& organ,
                          const Card& a,
                          const Card& b,
                          const std::vector<HeldKey>& held = noKeys,
                          const HeldKey& inHand = c4)
{
    return TrialLevels (organ.instrument, organ.cards, "Stop").compare (a, b, held, inHand);
}

double levelOf (const TestOrgan& organ, const Card& card, const std::vector<HeldKey>& held = noKeys)
{
    return compared (organ, card, card, held).levelDbOfA (LevelMeasure::rms);
}

} // namespace

TEST (TrialLevels, IdenticalCardsDifferByNothingAtAll)
{
    auto organ = larkfield();
    const Card krummhorn = *organ.cards.ofStops[8];
    const TrialLevels levels (organ.instrument, organ.cards, "Krummhorn 8");
    for (const LevelMeasure measure : { LevelMeasure::rms, LevelMeasure::aWeighted })
    {
        EXPECT_EQ (levels.compare (krummhorn, krummhorn, noKeys, { "Upper manual", 60 }).differenceDb (measure), 0.0);
        EXPECT_EQ (TrialLevels::ofCards (krummhorn, krummhorn, { 48, 60, 67 }, 60).differenceDb (measure), 0.0);
    }
}

// Closed form: half the volts is -6.0206 dB. The louder is lowered and the quieter left.
TEST (TrialLevels, HalfTheTapLevelIsSixDecibelsAndTheLouderIsLowered)
{
    const auto expectHalf = [] (const TrialComparison& comparison)
    {
        for (const LevelMeasure measure : { LevelMeasure::rms, LevelMeasure::aWeighted })
        {
            EXPECT_NEAR (comparison.differenceDb (measure), -halfDb, 1e-9);
            EXPECT_NEAR (comparison.gainDbOfA (measure), -halfDb, 1e-9);
            EXPECT_EQ (comparison.gainDbOfB (measure), 0.0);
        }
    };
    expectHalf (TrialLevels::ofCards (bareCard ("8", 1.0), bareCard ("8", 0.5), {}, 60));
    expectHalf (compared (oneStop(), bareCard ("8", 1.0), bareCard ("8", 0.5)));
    const auto reversed = compared (oneStop (passiveBus()), bareCard ("8", 0.5), bareCard ("8", 1.0));
    EXPECT_NEAR (reversed.gainDbOfB (LevelMeasure::rms), -halfDb, 1e-9);
    EXPECT_EQ (reversed.gainDbOfA (LevelMeasure::rms), 0.0);
}

// 1 V beside 1 V of the same generator is 2 V; half a volt beside it 1.5 V: 20 log10 0.75 = -2.4988 dB. As powers it would
// be -2.04 dB.
TEST (TrialLevels, OtherStopsAddAsVolts)
{
    auto organ = oneStop();
    organ.add ("Beside", bareCard());
    EXPECT_NEAR (compared (organ, bareCard ("8", 1.0), bareCard ("8", 0.5)).differenceDb (LevelMeasure::rms), -2.4988,
                 1e-4);
}

// Sawtooths an octave apart from one divider: harmonics 1 / n and, of the upper, 1 / m at n = 2 m. Sum of squares: odd n
// pi^2 / 8, even ones (9 / 4) pi^2 / 6, together three times pi^2 / 6: 4.771 dB. A fifth has no partial in common: 3.010.
TEST (TrialLevels, OctavesAreLockedAndOtherKeysAddAsPowers)
{
    const auto organ = oneStop();
    const Card saw = waveCard (WaveKind::sawtooth);
    const double alone = levelOf (organ, saw, { { "Upper", 48 } });
    EXPECT_NEAR (levelOf (organ, saw, { { "Upper", 48 }, { "Upper", 60 } }) - alone, 4.771, 0.03);
    EXPECT_NEAR (levelOf (organ, saw, { { "Upper", 48 }, { "Upper", 55 } }) - alone, 3.010, 0.03);

    const auto octaves = TrialLevels::ofCards (saw, saw, { 48, 60 }, 48);
    const auto lowest = TrialLevels::ofCards (saw, saw, {}, 48);
    EXPECT_NEAR (octaves.levelDbOfA (LevelMeasure::rms) - lowest.levelDbOfA (LevelMeasure::rms), 4.771, 0.03);
}

// Three stops that load each other on the passive bus, through its preamp: as RegistrationSum has them.
TEST (TrialLevels, AgreesWithTheRegistrationSum)
{
    auto organ = larkfield();
    const std::vector<std::string> names { "Krummhorn 8", "Oboe 8", "String 8" };
    for (StopTablet& stop : organ.instrument.stops)
        stop.drawn = std::ranges::find (names, stop.name) != names.end();
    const RailStudy study (organ.instrument, organ.cards);
    std::vector<std::size_t> stops;
    for (const auto& name : names)
        stops.push_back (study.findStop (name));
    const std::vector<int> keys { 48, 60, 64, 67 };
    std::vector<HeldKey> held;
    for (const int key : keys)
        held.push_back ({ "Upper manual", key });

    const auto expected = addRegistration (registrationTones (study, stops, keys)).sum;
    const TrialLevels levels (organ.instrument, organ.cards, "Krummhorn 8");
    const Card& krummhorn = study.card (stops[0]);
    const auto found = levels.compare (krummhorn, krummhorn, held, {});
    EXPECT_NEAR (std::sqrt (found.a.plain) / expected.rmsVolts, 1.0, tolerance::transferFunction);
    EXPECT_NEAR (std::sqrt (found.a.aWeighted) / expected.aWeightedVolts, 1.0, tolerance::transferFunction);
}

// A card that is 47 k where the other is a bare tap robs its neighbour on the bare wire, though it gives nothing itself.
TEST (TrialLevels, LoadingCounts)
{
    auto organ = oneStop (passiveBus());
    organ.add ("Beside", bareCard());
    Card stiff = bareCard ("8", 0.0);
    Card soft = stiff;
    soft.taps[0].sourceOhms = 47e3;
    // 47 k into 100 k with 47 k or 94 k across it, as siemens.
    const double g = 1.0 / 47e3;
    const double expected = (g + 1e-5 + g) / (g + 1e-5 + 0.5 * g);
    EXPECT_NEAR (compared (organ, stiff, soft).differenceDb (LevelMeasure::rms), toDecibels (expected), 1e-6);
}

TEST (TrialLevels, ARetiredStopInHandIsNotHeard)
{
    auto organ = oneStop();
    organ.add ("Beside", bareCard());
    organ.tablet ("Stop").drawn = false;
    EXPECT_EQ (compared (organ, bareCard(), bareCard ("8", 0.1)).differenceDb (LevelMeasure::rms), 0.0);
    EXPECT_GT (levelOf (organ, bareCard()), -20.0);
}

TEST (TrialLevels, SilenceHasNothingToMatch)
{
    const auto comparison = compared (oneStop(), bareCard(), bareCard ("8", 0.0));
    EXPECT_EQ (comparison.differenceDb (LevelMeasure::rms), 0.0);
    EXPECT_EQ (comparison.gainDbOfA (LevelMeasure::rms), 0.0);
    EXPECT_EQ (comparison.gainDbOfB (LevelMeasure::aWeighted), 0.0);
    EXPECT_EQ (comparison.levelDbOfB (LevelMeasure::rms), -INFINITY);
}

TEST (TrialLevels, TheKeyInHandCountsWhenNoneIsHeld)
{
    const auto organ = oneStop();
    const Card saw = waveCard (WaveKind::sawtooth);
    const auto inHand = compared (organ, saw, saw, noKeys, { "Upper", 48 });
    EXPECT_EQ (inHand.a.plain, compared (organ, saw, saw, { { "Upper", 48 } }, { "Upper", 72 }).a.plain);
    EXPECT_NE (inHand.a.aWeighted, compared (organ, saw, saw, { { "Upper", 72 } }, { "Upper", 48 }).a.aWeighted);
    EXPECT_EQ (compared (organ, saw, saw, { { "Upper", 20 }, { "Nowhere", 60 } }).a.plain, 0.0);
}

// An octave coupler gives each key the one above: as if both were held.
TEST (TrialLevels, CouplersPlayAlong)
{
    auto organ = oneStop();
    const Card saw = waveCard (WaveKind::sawtooth);
    const double both = levelOf (organ, saw, { { "Upper", 60 }, { "Upper", 72 } });
    organ.instrument.couplers.push_back (
        { .name = "Octave", .from = "Upper", .to = "Upper", .octaves = 1, .drawn = true });
    EXPECT_EQ (levelOf (organ, saw, { { "Upper", 60 } }), both);
}

// 10 k a key into 10 k: two keys a fifth apart each give 2/3, so 3.010 - 3.522 dB re one alone.
TEST (TrialLevels, KeyedBusesSag)
{
    auto organ = oneStop();
    KeyedBus bus;
    bus.name = "Square 8";
    bus.collectorOhms = 10e3;
    bus.loadOhms = 10e3;
    organ.instrument.keyedBuses.push_back (bus);
    const double alone = levelOf (organ, bareCard(), { { "Upper", 48 } });
    EXPECT_NEAR (levelOf (organ, bareCard(), { { "Upper", 48 }, { "Upper", 55 } }) - alone, -0.512, 0.03);
}

// 1 + 0.3^2 / 2 of the power: 0.1912 dB.
TEST (TrialLevels, ATremulantThatIsOnCountsWithItsMeanPower)
{
    auto organ = oneStop();
    organ.instrument.outlets[0].kind = OutletKind::tremulant;
    const double swinging = levelOf (organ, bareCard());
    organ.instrument.outlets[0].isOn = false;
    EXPECT_NEAR (swinging - levelOf (organ, bareCard()), 0.1912, 1e-4);
}

// Without any bus stops are played through one virtual earth; a stop on a bus that leads nowhere is not heard.
TEST (TrialLevels, FollowsTheWayOfTheSound)
{
    auto organ = oneStop();
    const double usual = levelOf (organ, bareCard());
    auto bare = organ;
    bare.instrument.mixingBuses.clear();
    bare.instrument.preamps.clear();
    bare.instrument.outlets.clear();
    EXPECT_NEAR (levelOf (bare, bareCard()), usual, 1e-9);

    auto twice = organ;
    twice.instrument.preamps.push_back (twice.instrument.preamps[0]);
    EXPECT_NEAR (levelOf (twice, bareCard()) - usual, halfDb, 1e-9);
    organ.instrument.preamps[0].outlet = "Nowhere";
    EXPECT_EQ (levelOf (organ, bareCard()), -INFINITY);
}

TEST (TrialLevels, NamesTheTabletThatIsNotThere)
{
    const auto organ = oneStop();
    try
    {
        const TrialLevels levels (organ.instrument, organ.cards, "Vox");
        FAIL();
    }
    catch (const Error& error)
    {
        EXPECT_STREQ (error.what(), "There is no tablet \"Vox\" in this instrument; take one of its stops in hand.");
    }
}

TEST (TrialLevels, GiveUpWhenNobodyWantsThemAnyMore)
{
    auto organ = larkfield();
    for (StopTablet& stop : organ.instrument.stops)
        stop.drawn = true;
    const Card krummhorn = *organ.cards.ofStops[8];
    auto louder = krummhorn;
    louder.taps[0].voltsPeakToPeak *= 2.0;
    const TrialLevels levels (organ.instrument, organ.cards, "Krummhorn 8");
    const HeldKey key { "Upper manual", 60 };
    int asked = 0;
    const auto last = levels.compareUnless (
        [&]
        {
            ++asked;
            return false;
        },
        krummhorn, louder, noKeys, key);
    ASSERT_TRUE (last.has_value());
    EXPECT_GT (asked, static_cast<int> (organ.instrument.stops.size())) << "before each stop";
    for (int most = 0; most < asked; ++most)
    {
        int left = most;
        EXPECT_FALSE (levels.compareUnless ([&] { return left-- == 0; }, krummhorn, louder, noKeys, key).has_value());
    }
    const auto after = levels.compare (krummhorn, louder, noKeys, key);
    EXPECT_EQ (after.differenceDb (LevelMeasure::rms), last->differenceDb (LevelMeasure::rms))
        << "what was left half done is not in the way";
}

} // namespace stopwright::test
