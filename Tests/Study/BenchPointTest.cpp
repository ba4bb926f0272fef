// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/BenchPoint.h"

#include "Circuit/SmallSignal.h"
#include "Organ/TestOrgan.h"
#include "Study/BenchWave.h"
#include "Study/MeterReadings.h"
#include "Study/SampleCards.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright::test
{

namespace
{

using Complex = std::complex<double>;

const std::vector<double> someHz { 33.0, 261.6, 1100.0, 5000.0, 19000.0, 300e3 };

} // namespace

// The same card with the probe or load drawn in as parts, solved node by node.
TEST (LoadedNode, IsTheNetworkWithTheLoadDrawnIn)
{
    const Card card = *larkfield().cards.ofStops[8]; // Krummhorn 8
    Card drawn = card;
    drawn.parts.push_back ({ "Load", { card.output, "0" }, Resistor { 33e3 } });
    drawn.parts.push_back ({ "Loom", { card.output, "0" }, Capacitor { 470e-12 } });
    const SmallSignal whole (netlistOf (drawn));
    const SmallSignal alone (netlistOf (card));
    const auto load = [] (double hz) { return Complex (1.0 / 33e3, 2.0 * M_PI * hz * 470e-12); };
    for (const std::string node : { "sq", "t", "h", "m", "out" })
        for (const double hz : someHz)
        {
            const auto loaded = LoadedNode (card, node, load).at (hz);
            const auto bare = LoadedNode (card, node).at (hz);
            const auto wanted = whole.responses (node, hz);
            const auto unloaded = alone.responses (node, hz);
            for (std::size_t tap = 0; tap < wanted.size(); ++tap)
            {
                EXPECT_LT (std::abs (loaded.tapGains[tap] - wanted[tap]), 1e-9) << node << ' ' << hz;
                EXPECT_LT (std::abs (bare.tapGains[tap] - unloaded[tap]), 1e-9) << node << ' ' << hz;
            }
            const auto ohms = whole.impedance (node, hz);
            EXPECT_LT (std::abs (loaded.ohms - ohms), 1e-8 * std::abs (ohms)) << node << ' ' << hz;
        }
}

TEST (LoadedNode, RefusesNodesThereAreNot)
{
    const Card card = *larkfield().cards.ofStops[8];
    EXPECT_THROW (LoadedNode (card, "0"), Error);
    try
    {
        LoadedNode (card, "nowhere");
        FAIL();
    }
    catch (const Error& error)
    {
        EXPECT_NE (std::string (error.what()).find ("\"st\""), std::string::npos) << error.what();
    }
}

// In its instrument the card's output is what the bus makes of it, through the mixing resistor: the current is the same.
TEST (BenchPoint, CardAndBusAgree)
{
    const auto organ = larkfield();
    for (const std::string stop : { "Krummhorn 8", "Stopped flute 8" })
    {
        const auto atCard = BenchPoint::ofStop (organ.instrument, organ.cards, stop, "");
        const auto atBus = BenchPoint::ofBus (organ.instrument, organ.cards, stop);
        const RailStudy rail (organ.instrument, organ.cards);
        const auto index = rail.findStop (stop);
        for (const double hz : someHz)
        {
            const double mixing = organ.instrument.stops[index].mixingOhms;
            const MixingBus& bus = organ.instrument.mixingBuses[*rail.busOf (index)];
            for (std::size_t tap = 0; tap < atCard.at (hz).tapGains.size(); ++tap)
            {
                // Passive: the bus itself is the resistor's other end. Virtual earth: out = -A p.
                Complex end = atBus.at (hz).tapGains[tap];
                if (bus.kind == BusKind::virtualEarth)
                    end /= -Complex (0.0, -*bus.gainBandwidthHz / hz);
                const auto& port = rail.port (index).at (hz);
                const Complex amps = (port.tapGains[tap] - end) / (port.ohms + mixing);
                EXPECT_LT (std::abs (atCard.at (hz).tapGains[tap] - (end + amps * mixing)), 1e-8) << stop << ' ' << hz;
            }
        }
    }
}

TEST (BenchPoint, PreampIsWhatTheRailStudyHears)
{
    const auto organ = larkfield();
    const RailStudy rail (organ.instrument, organ.cards);
    for (const std::string stop : { "Krummhorn 8", "Stopped flute 8", "Oboe 8" })
    {
        auto state = rail.asOpened();
        state.stands[rail.findStop (stop)] = StopStand::drawn;
        const auto partials = rail.partials (rail.findStop (stop), 60, state, RailStudy::allStages, 1e6);
        double power = 0.0;
        for (const RailPartial& partial : partials)
            power += 0.5 * std::norm (partial.volts);
        const auto point = BenchPoint::ofPreamp (organ.instrument, organ.cards, stop);
        EXPECT_NEAR (meterReadings (benchWave (point, 60).waves).rmsVolts, std::sqrt (power), 1e-3 * std::sqrt (power));
    }
}

TEST (BenchPoint, TellsWhatIsMissing)
{
    auto organ = emptyOrgan (passiveBus());
    organ.add ("Free", bareCard()).bus.clear();
    organ.add ("Bound", bareCard());
    EXPECT_THROW (BenchPoint::ofBus (organ.instrument, organ.cards, "Free"), Error);
    organ.instrument.preamps.clear();
    EXPECT_THROW (BenchPoint::ofPreamp (organ.instrument, organ.cards, "Bound"), Error);
    EXPECT_THROW (BenchPoint::ofStop (organ.instrument, organ.cards, "Gone", ""), Error);
}

// A staircase of +-1 V through a shunt tank, generators up to C9: Fourier series times the tank's closed form.
TEST (BenchWave, TotalsOfATank)
{
    struct Value
    {
        int key;
        double dbv;
    };

    for (const Value& value : { Value { 36, -22.473 }, Value { 48, -18.683 }, Value { 60, -15.318 },
                                Value { 72, -10.810 }, Value { 84, -5.326 } })
    {
        const auto point = BenchPoint::ofCard (shuntTankCard (WaveKind::staircase), keysUpToC9(), "");
        EXPECT_NEAR (toDecibels (meterReadings (benchWave (point, value.key).waves).rmsVolts), value.dbv, 0.002)
            << value.key;
    }
}

} // namespace stopwright::test
