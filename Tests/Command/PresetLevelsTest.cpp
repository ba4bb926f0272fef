// SPDX-License-Identifier: GPL-3.0-or-later
//
// The levels of the demonstration organ from its stops to the ends of its preamps. A full registration of 0.1 to 1 V rms
// and ten notes with three stops on a manual are common practice, no published source.
#include "Command/ProgramRun.h"
#include "Organ/InstrumentCards.h"
#include "Organ/InstrumentDocument.h"
#include "Study/HarmonicTable.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>

namespace stopwright
{

namespace
{

const std::vector<int> tenKeys { 36, 43, 48, 52, 55, 60, 64, 67, 72, 76 };
const std::vector<int> twoFeet { 36, 43 };

/// A stop's card with its mixing resistor and the bus behind it: the voltage at the bus's output is the card's output.
/// On a passive bus the other stops are retired, each with its mixing resistor to common.
Card onItsBus (Card card, const StopTablet& stop, const Instrument& organ)
{
    const auto isItsBus = [&stop] (const MixingBus& bus) { return bus.name == stop.bus; };
    const auto& bus = *std::find_if (organ.mixingBuses.begin(), organ.mixingBuses.end(), isItsBus);
    card.parts.push_back ({ "its own", { card.output, "bus" }, Resistor { stop.mixingOhms }, 0.0 });
    card.output = "bus";
    if (bus.kind == BusKind::virtualEarth)
    {
        card.parts.push_back ({ "feedback", { "bus", "sum" }, Resistor { bus.feedbackOhms }, 0.0 });
        card.parts.push_back ({ "amplifier", { "0", "bus", "sum" }, OpAmp(), 0.0 });
        card.output = "sum";
        return card;
    }
    card.parts.push_back ({ "load", { "bus", "0" }, Resistor { bus.loadOhms }, 0.0 });
    for (const auto& other : organ.stops)
        if (other.bus == stop.bus && other.name != stop.name)
            card.parts.push_back ({ other.name, { "bus", "0" }, Resistor { other.mixingOhms }, 0.0 });
    return card;
}

double gainOf (const Instrument& organ, const std::string& bus)
{
    double gain = 1.0;
    for (const auto& preamp : organ.preamps)
        if (preamp.bus == bus)
            for (const auto& stage : preamp.stages)
                gain *= stage.gain;
    return std::abs (gain);
}

/// Mean square, in volts, of a stop with all these keys at the end of its preamp; notes are of different pitches, so
/// their powers add.
double powerOf (const Instrument& organ, std::size_t index, const Card& card)
{
    const auto& stop = organ.stops[index];
    const auto loaded = onItsBus (card, stop, organ);
    const auto source = keySourceOf (organ, stop.division, loaded);
    double sum = 0.0;
    for (const int key : stop.division == "Pedal" ? twoFeet : tenKeys)
        for (const auto& row : harmonicTable (loaded, source, key))
            sum += 0.5 * row.outputPeakVolts * row.outputPeakVolts;
    return sum * std::pow (gainOf (organ, stop.bus), 2.0);
}

class PresetLevels : public testing::Test
{
protected:
    /// Volts rms at the end of a bus's preamp with the three loudest of the stops that are asked for.
    double threeStopsRms (const std::string& bus, const std::function<bool (const StopTablet&)>& isAskedFor) const
    {
        std::vector<double> powers;
        for (std::size_t i = 0; i < organ_.stops.size(); ++i)
            if (organ_.stops[i].bus == bus && isAskedFor (organ_.stops[i]))
                powers.push_back (powerOf (organ_, i, cards_.ofStops[i].value()));
        std::sort (powers.rbegin(), powers.rend());
        powers.resize (std::min<std::size_t> (powers.size(), 3));
        return std::sqrt (std::accumulate (powers.begin(), powers.end(), 0.0));
    }

    const std::filesystem::path file_ = preset ("LarkfieldOrgan.json");
    const Instrument organ_ = readInstrument (file_);
    const InstrumentCards cards_ = instrumentCards (organ_, file_);
};

} // namespace

TEST_F (PresetLevels, TenNotesWithThreeStopsStayInsideTheRails)
{
    constexpr double crestFactor = 5.0; // of many sounding partials; common practice, no source
    ASSERT_EQ (organ_.mixingBuses.size(), 4U);
    for (const auto& bus : organ_.mixingBuses)
    {
        const double rms = threeStopsRms (bus.name, [] (const StopTablet&) { return true; });
        EXPECT_GT (rms, 0.3) << bus.name;
        EXPECT_LT (rms, 1.0) << bus.name;
        EXPECT_LT (crestFactor * rms, 6.0) << bus.name;
        RecordProperty (bus.name, std::to_string (rms));
    }
}

TEST_F (PresetLevels, WhatIsDrawnAtTheStartAndTheFluteBesideItAreHeardOnTheirChannels)
{
    for (const std::string bus : { "Upper flutes", "Upper reeds" })
    {
        const double rms =
            threeStopsRms (bus, [] (const StopTablet& stop) { return stop.drawn || stop.name == "Stopped flute 8"; });
        EXPECT_GT (rms, 0.1) << bus;
        EXPECT_LT (rms, 1.0) << bus;
    }
}

TEST_F (PresetLevels, EveryBusHasAPreampWithCouplingAndRails)
{
    for (const auto& bus : organ_.mixingBuses)
    {
        const auto preamp = std::find_if (organ_.preamps.begin(), organ_.preamps.end(),
                                          [&bus] (const Preamp& p) { return p.bus == bus.name; });
        ASSERT_NE (preamp, organ_.preamps.end()) << bus.name;
        for (const auto& stage : preamp->stages)
        {
            EXPECT_TRUE (stage.coupling) << stage.name;
            EXPECT_EQ (stage.rails, (SupplyRails { -6.0, 6.0 })) << stage.name;
        }
    }
}

} // namespace stopwright
