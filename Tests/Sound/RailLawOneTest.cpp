// SPDX-License-Identifier: GPL-3.0-or-later
//
// What is heard is what is drawn, for whole registrations: the partials measured at the outlets are those that Fourier
// series and circuit analysis give for all drawn stops, buses and preamps as one network.
#include "Organ/WholeRailCard.h"
#include "Sound/InstrumentVoice.h"
#include "Sound/TestVoice.h"
#include "Study/HarmonicTable.h"
#include "Support/Spectrum.h"
#include "Support/Tolerances.h"
#include "Units/Decibels.h"
#include "Units/Pitch.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ostream>
#include <string>
#include <vector>

namespace stopwright::test
{

namespace
{

constexpr double rateHz = 48000.0;
constexpr double highestHz = 10000.0;

struct Registration
{
    std::string name;
    std::string division;
    std::vector<std::string> stops;

    friend std::ostream& operator<< (std::ostream& out, const Registration& registration)
    {
        return out << registration.name;
    }
};

/// A reed beside the flute, on two buses to two outlets; three reeds that load each other on the passive bus; a chorus on
/// the virtual earth, through two stages.
std::vector<Registration> registrations()
{
    return { { "ReedAndFlute", "Upper manual", { "Krummhorn 8", "Stopped flute 8" } },
             { "ThreeReeds", "Upper manual", { "Krummhorn 8", "Oboe 8", "String 8" } },
             { "Chorus", "Lower manual", { "Diapason 8", "Principal 4", "Trumpet 8" } } };
}

TestOrgan larkfieldWith (const Registration& registration)
{
    auto organ = larkfield();
    for (StopTablet& stop : organ.instrument.stops)
        stop.drawn = std::ranges::find (registration.stops, stop.name) != registration.stops.end();
    for (Outlet& outlet : organ.instrument.outlets)
        outlet.isOn = false;
    return organ;
}

int divisionIndex (const Instrument& instrument, const std::string& name)
{
    return static_cast<int> (std::ranges::find (instrument.divisions, name, &Division::name)
                             - instrument.divisions.begin());
}

/// A second of one key past the attack, as `render` makes volts.
std::vector<double> oneSecond (const TestOrgan& organ, const Registration& registration, int key)
{
    StreamSpec spec { .deviceRateHz = rateHz };
    spec.lowestInternalRateHz = StreamSpec::fineInternalRateHz;
    InstrumentVoice voice (organ.instrument, organ.cards, spec);
    voice.key (divisionIndex (organ.instrument, registration.division), key, true, 0);
    renderVoice (voice, 24000);
    auto samples = renderVoice (voice, 48000);
    EXPECT_EQ (voice.takeClips(), 0U) << registration.name << ' ' << keyName (key);
    return samples;
}

class RailLawOne : public testing::TestWithParam<Registration>
{};

} // namespace

TEST_P (RailLawOne, RenderedPartialsAreTheComputedOnes)
{
    const auto organ = larkfieldWith (GetParam());
    const Card whole = wholeRailCard (organ, GetParam().division);
    const auto keySource = keySourceOf (organ.instrument, GetParam().division, whole);
    for (const int key : { 36, 60, 84 })
    {
        const auto samples = oneSecond (organ, GetParam(), key);
        double worst = 0.0;
        double worstHz = 0.0;
        int count = 0;
        for (const HarmonicRow& row : harmonicTable (whole, keySource, key, highestHz))
        {
            if (row.outputDb < tolerance::renderedFloorDb)
                continue;
            const double peak = std::abs (windowedPartial (samples, row.frequencyHz, rateHz));
            const double db = toDecibels (peak / row.outputPeakVolts);
            worstHz = std::abs (db) > std::abs (worst) ? row.frequencyHz : worstHz;
            worst = std::abs (db) > std::abs (worst) ? db : worst;
            ++count;
        }
        std::printf ("%-14s %-2s: %3d partials, worst %+.4f dB at %.0f Hz\n", GetParam().name.c_str(),
                     keyName (key).c_str(), count, worst, worstHz);
        EXPECT_GT (count, 2);
        EXPECT_LT (std::abs (worst), tolerance::renderedLevelDb) << keyName (key) << " at " << worstHz;
    }
}

INSTANTIATE_TEST_SUITE_P (Larkfield,
                          RailLawOne,
                          testing::ValuesIn (registrations()),
                          [] (const auto& registration) { return registration.param.name; });

// The twin: another stop on the passive bus moves the others' levels by more than the bar, and the analysis knows.
TEST (RailLawOneTwin, LoadingIsMoreThanTheBar)
{
    const auto registration = registrations()[1];
    auto organ = larkfieldWith (registration);
    organ.tablet ("Oboe 8").whenRetired = WhenRetired::open;
    organ.tablet ("Oboe 8").drawn = false;
    const auto levelOf = [&] (const TestOrgan& rail)
    {
        const Card whole = wholeRailCard (rail, registration.division);
        return rmsVolts (harmonicTable (whole, keySourceOf (rail.instrument, registration.division, whole), 60));
    };
    const double open = levelOf (organ);
    organ.tablet ("Oboe 8").whenRetired = WhenRetired::grounded;
    EXPECT_GT (toDecibels (open / levelOf (organ)), 2.0 * tolerance::renderedLevelDb);
}

} // namespace stopwright::test
