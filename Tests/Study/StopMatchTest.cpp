// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/StopMatch.h"

#include "Study/LoadedStops.h"
#include "Study/SampleCards.h"
#include "Support/Random.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

namespace stopwright::test
{

namespace
{

constexpr int middleKey = 60;

MatchWish wishAt (int key, double offsetDb)
{
    MatchWish wish;
    wish.offsetDb = offsetDb;
    wish.keys = { key };
    return wish;
}

/// So many bare squares through 47 k, all drawn.
TestOrgan squares (const MixingBus& bus, int count)
{
    auto organ = emptyOrgan (bus);
    for (int stop = 0; stop < count; ++stop)
        organ.add ("Stop " + std::to_string (stop), bareCard());
    return organ;
}

std::string sentenceOf (const StopMatch& match, const MatchWish& wish)
{
    try
    {
        return std::to_string (match.solve (wish));
    }
    catch (const Error& error)
    {
        return error.what();
    }
}

} // namespace

// A virtual earth: 20 log (47 k / R), closed form.
TEST (StopMatch, StepsOfAVirtualEarth)
{
    const auto organ = squares (virtualEarth(), 2);
    const RailStudy study (organ.instrument, organ.cards);
    const StopMatch match (study, 0, 1, study.asOpened());

    struct Value
    {
        double ohms;
        double db;
    };

    for (const Value& value :
         { Value { 56e3, -1.5218 }, Value { 43e3, 0.7726 }, Value { 39e3, 1.6207 }, Value { 100e3, -6.5580 },
           Value { 54.05e3, -1.2140 }, Value { 91e3, -5.739 }, Value { 82e3, -4.834 } })
        EXPECT_NEAR (match.step (wishAt (middleKey, 0.0), value.ohms).meanDb, value.db, 0.0005) << value.ohms;
}

// 5.4 dB below a neighbour of 47 k: 47 k times 10^(5.4 / 20), closed form.
TEST (StopMatch, ResistorOfAVirtualEarth)
{
    const auto organ = squares (virtualEarth(), 9);
    const RailStudy study (organ.instrument, organ.cards);
    const StopMatch match (study, 8, 0, study.asOpened());
    EXPECT_NEAR (match.solve (wishAt (middleKey, -5.4)), 87518.0, 1.0);
}

// The same on a wire of 100 k with eight others: the bus grows louder as the resistor grows, so that a step down from what
// the neighbours are today takes more, and the neighbours shift. Closed form: (1 / R) / (8 / 47 k + 1 / 100 k + 1 / R).
TEST (StopMatch, ResistorOfAPassiveBus)
{
    const auto organ = squares (passiveBus(), 9);
    const RailStudy study (organ.instrument, organ.cards);
    const StopMatch match (study, 8, 0, study.asOpened());
    MatchWish wish = wishAt (middleKey, -5.4);
    wish.against = MatchAgainst::today;
    EXPECT_NEAR (match.solve (wish), 92.3e3, 50.0);
    EXPECT_NEAR (match.step (wish, 91e3).meanDb, -5.284, 0.0005);
    EXPECT_NEAR (match.step (wish, 82e3).meanDb, -4.434, 0.0006);
    for (const auto& [ohms, db] : { std::pair { 91e3, -0.514 }, { 82e3, -0.569 } })
    {
        const auto shifts = match.shifts (ohms);
        ASSERT_EQ (shifts.size(), 8U);
        for (const auto& shift : shifts)
        {
            EXPECT_NEAR (shift.fromWithout.compassDb, db, 0.0005);
            EXPECT_NEAR (shift.fromWithout.largestDb, db, 0.0005);
            EXPECT_GT (shift.fromToday.compassDb, 0.0);
        }
    }

    // Once it is in, both stand on the same bus, and only the ratio of the resistors is left.
    wish.against = MatchAgainst::finished;
    EXPECT_NEAR (match.solve (wish), 87518.0, 1.0);
}

// A staircase through a shunt tank and a square through three sections of 47 k and 10 nF, matched at C4: Fourier series
// times nodal analysis by hand, frequency weighting A by IEC 61672-1 to its three decimals.
TEST (StopMatch, ReedAndFluteMatchedAtMiddleC)
{
    auto organ = emptyOrgan (virtualEarth());
    organ.add ("Reed", buffered (shuntTankCard (WaveKind::staircase)));
    organ.add ("Flute", buffered (threeSectionCard()));
    const RailStudy study (organ.instrument, organ.cards);
    const StopMatch match (study, 0, 1, study.asOpened());
    constexpr std::array keys { 36, 48, 60, 72, 84, 96 };
    constexpr std::array rms { -17.548, -9.552, 0.0, 13.007, 30.339, 30.013 };
    constexpr std::array weighted { -2.869, -2.667, 0.0, 7.933, 22.318, 21.954 };
    MatchWish wish = wishAt (middleKey, 0.0);
    const double ohms = match.solve (wish);
    wish.measure = LevelMeasure::aWeighted;
    const double weightedOhms = match.solve (wish);
    for (std::size_t index = 0; index < keys.size(); ++index)
    {
        EXPECT_NEAR (match.differenceDb (keys[index], ohms, LevelMeasure::rms, wish.against), rms[index], 0.0011);
        EXPECT_NEAR (match.differenceDb (keys[index], weightedOhms, LevelMeasure::aWeighted, wish.against),
                     weighted[index], 0.002);
    }
}

// Volts that fall by half each octave beside volts that do not: 470 k, and half of it for each octave up.
TEST (StopMatch, GradedResistorsOfAStopThatFallsByHalf)
{
    Card falling = bareCard();
    falling.parts = { { "R1", { "a", "b" }, Resistor { 47e3 }, 0.0 },
                      { "C1", { "b", "0" }, Capacitor { 10e-6 }, 0.0 } };
    falling.output = "b";
    falling.taps.front().wave.kind = WaveKind::triangle;
    Card level = bareCard();
    level.taps.front().wave.kind = WaveKind::triangle;
    auto organ = emptyOrgan (virtualEarth());
    organ.add ("Falling", buffered (falling));
    organ.add ("Level", level);
    const RailStudy study (organ.instrument, organ.cards);
    const StopMatch match (study, 0, 1, study.asOpened());
    const MatchWish lowest = wishAt (36, 0.0);
    const MatchWish wish = wishAt (36, match.step (lowest, 470e3).meanDb);
    double ohms = 470e3;
    for (int key = 36; key <= 84; key += 12, ohms *= 0.5)
        EXPECT_NEAR (*match.findAt (key, wish).ohms, ohms, 1e-4 * ohms) << key;
}

TEST (StopMatch, AStopMatchesItselfWithItsOwnResistor)
{
    const auto organ = larkfield();
    const RailStudy study (organ.instrument, organ.cards);
    for (const std::string name : { "Krummhorn 8", "Vox humana 8", "Trumpet 8" })
    {
        const auto stop = study.findStop (name);
        const StopMatch match (study, stop, stop, study.asOpened());
        const double own = match.presentOhms();
        MatchWish wish = wishAt (middleKey, 0.0);
        EXPECT_NEAR (match.solve (wish), own, 1e-9 * own) << name;
        wish.keys = match.keys();
        EXPECT_NEAR (match.solve (wish), own, 1e-6 * own) << name;
        EXPECT_EQ (match.step (wish, own).deviationDb, 0.0) << name;
    }
}

TEST (StopMatch, TheOrderOfTheStopsDoesNotMatter)
{
    auto organ = larkfield();
    const auto solved = [&organ]
    {
        const RailStudy study (organ.instrument, organ.cards);
        const StopMatch match (study, study.findStop ("Krummhorn 8"), study.findStop ("Oboe 8"), study.asOpened());
        return match.solve (wishAt (middleKey, -2.0));
    };
    const double before = solved();
    std::ranges::reverse (organ.instrument.stops);
    std::ranges::reverse (organ.cards.ofStops);
    EXPECT_NEAR (solved(), before, 1e-9 * before);
}

// The resistor that was found, put into the whole rail as one network, gives the step.
TEST (StopMatch, HoldsInTheWholeRail)
{
    Random random (20260);
    auto slow = virtualEarth();
    slow.gainBandwidthHz = 100e3;
    auto loom = passiveBus();
    loom.loadOhms = 22e3;
    loom.loadFarads = 2e-9;
    int solved = 0;
    for (const MixingBus& bus : { passiveBus(), loom, virtualEarth(), slow, loom, passiveBus() })
        for (const double offsetDb : { 0.0, -3.0, 4.0 })
        {
            auto organ = randomOrgan (random, bus, random.integer (2, 5));
            const RailStudy study (organ.instrument, organ.cards);
            const StopMatch match (study, 0, 1, study.asOpened());
            const auto ohms = match.findAt (73, wishAt (73, offsetDb)).ohms;
            if (! ohms)
                continue;
            ++solved;
            organ.instrument.stops[0].mixingOhms = *ohms;
            const double stop = wholeRailVolts (organ, 0, 73);
            const double reference = wholeRailVolts (organ, 1, 73);
            EXPECT_NEAR (toDecibels (stop / reference), offsetDb, 1e-6);
        }
    EXPECT_GT (solved, 9);
}

TEST (StopMatch, SeveralKeysAreMetInTheLeastSquaresSense)
{
    const auto organ = larkfield();
    const RailStudy study (organ.instrument, organ.cards);
    const StopMatch match (study, study.findStop ("Krummhorn 8"), study.findStop ("Oboe 8"), study.asOpened());
    MatchWish wish;
    wish.keys = match.keys();
    const double ohms = match.solve (wish);
    const double least = match.step (wish, ohms).deviationDb;
    for (const double factor : { 0.9, 0.99, 1.01, 1.1, 2.0 })
        EXPECT_GT (match.step (wish, factor * ohms).deviationDb, least) << factor;
}

// 20 log (47 k / R) at what is sold, 10 ohm and 10 Mohm: closed form.
TEST (StopMatch, OffersOnlyWhatIsSold)
{
    const auto organ = squares (virtualEarth(), 2);
    const RailStudy study (organ.instrument, organ.cards);
    const StopMatch match (study, 0, 1, study.asOpened());

    struct Value
    {
        double offsetDb;
        MatchMiss miss;
    };

    for (const Value& value : { Value { 73.4, MatchMiss::none }, Value { 73.5, MatchMiss::tooSoft },
                                Value { -46.5, MatchMiss::none }, Value { -46.6, MatchMiss::tooLoud } })
    {
        MatchWish wish = wishAt (middleKey, value.offsetDb);
        EXPECT_EQ (match.find (wish).miss, value.miss) << value.offsetDb;
        EXPECT_EQ (match.find (wish).ohms.has_value(), value.miss == MatchMiss::none) << value.offsetDb;
        EXPECT_EQ (match.findAt (36, wish).miss, value.miss) << value.offsetDb;
        wish.keys = match.keys();
        EXPECT_EQ (match.find (wish).miss, value.miss) << value.offsetDb;
    }
}

TEST (StopMatch, SaysWhichKeysAreSilent)
{
    auto organ = squares (virtualEarth(), 2);
    organ.instrument.tuning.highestKey = 84; // C6: no generator above
    const RailStudy study (organ.instrument, organ.cards);
    const StopMatch match (study, 0, 1, study.asOpened());
    EXPECT_EQ (match.findAt (84, wishAt (84, 0.0)).miss, MatchMiss::none);
    EXPECT_EQ (match.findAt (85, wishAt (85, 0.0)).miss, MatchMiss::silent);
    EXPECT_FALSE (match.findAt (85, wishAt (85, 0.0)).ohms);
    EXPECT_NE (sentenceOf (match, wishAt (85, 0.0)).find ("none sounds with both stops"), std::string::npos);
    EXPECT_THROW (match.step (wishAt (85, 0.0), 47e3), Error);
}

TEST (StopMatch, SaysWhatCannotBeReached)
{
    auto organ = squares (passiveBus(), 2);
    const RailStudy study (organ.instrument, organ.cards);
    const StopMatch match (study, 0, 1, study.asOpened());
    const auto tooLoud = sentenceOf (match, wishAt (middleKey, 100.0));
    EXPECT_NE (tooLoud.find ("No mixing resistor that is sold brings \"Stop 0\" to +100.00 dB"), std::string::npos)
        << tooLoud;
    EXPECT_NE (tooLoud.find ("the smallest, 10.0 Ω (common practice, no source), it comes to +73.44 dB"),
               std::string::npos)
        << tooLoud; // 47 k against 10 ohm, closed form
    const auto tooSoft = sentenceOf (match, wishAt (middleKey, -100.0));
    EXPECT_NE (tooSoft.find ("the largest, 10.0 MΩ (common practice, no source), it is still at -46.56 dB"),
               std::string::npos)
        << tooSoft; // against 10 Mohm, closed form
    EXPECT_NE (sentenceOf (match, wishAt (20, 0.0)).find ("C2 to C7"), std::string::npos);

    MatchWish all = wishAt (middleKey, 100.0);
    all.keys = match.keys();
    EXPECT_NE (sentenceOf (match, all).find ("No mixing resistor"), std::string::npos);

    organ.tablet ("Stop 0").bus.clear();
    const RailStudy off (organ.instrument, organ.cards);
    const StopMatch free (off, 0, 1, off.asOpened());
    EXPECT_NE (sentenceOf (free, wishAt (middleKey, 0.0)).find ("no mixing bus"), std::string::npos);
}

} // namespace stopwright::test
