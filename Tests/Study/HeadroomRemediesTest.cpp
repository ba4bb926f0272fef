// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/HeadroomRemedies.h"

#include "Circuit/SmallSignal.h"
#include "Organ/TestOrgan.h"
#include "Study/TapPartials.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>
#include <vector>

namespace stopwright::test
{

namespace
{

using Kind = HeadroomRemedy::Kind;

constexpr int key = 36;
constexpr double loadOhms = 10e3;
constexpr double loadFarads = 10e-9;
constexpr double inputOhms = 47e3;
constexpr double couplingFarads = 220e-9;
constexpr double mixingOhms[] { 22e3, 33e3 };
constexpr double marginDb = 3.0;

Card triangle (const std::string& footage)
{
    auto card = bareCard (footage);
    card.taps.front().wave.kind = WaveKind::triangle;
    return card;
}

/// Two triangles on a bare wire of 10 k and an amplifier of this gain behind it, with 1 dB of room.
TestOrgan bareWire (double gain)
{
    auto bus = passiveBus();
    bus.loadOhms = loadOhms;
    bus.loadFarads = loadFarads;
    auto organ = emptyOrgan (bus);
    organ.add ("First", triangle ("8"), "Upper", "Bus", mixingOhms[0]);
    organ.add ("Second", triangle ("4"), "Upper", "Bus", mixingOhms[1]);
    auto& stage = organ.instrument.preamps.front().stages.emplace_back();
    organ.cards.ofStages.front().emplace_back();
    stage.name = "Gain";
    stage.gain = gain;
    stage.gainBandwidthHz = 1e6;
    stage.coupling = Coupling { couplingFarads, inputOhms };
    const auto peak = headroomOf (organ.instrument, organ.cards, { .held = { { "Upper", key } } })[1].peakVolts();
    stage.rails = SupplyRails { -peak * fromDecibels (1.0), peak * fromDecibels (1.0) };
    return organ;
}

std::vector<StageHeadroom> stagesOf (const TestOrgan& organ)
{
    return headroomOf (organ.instrument, organ.cards, { .held = { { "Upper", key } }, .marginDb = marginDb });
}

std::optional<double> wantedOf (const StageHeadroom& stage, Kind kind)
{
    for (const auto& remedy : stage.remedies)
        if (remedy.kind == kind)
            return remedy.wanted;
    return {};
}

/// The same drawn as one network, the stage's input out of the load of the bus and behind a resistor.
Card drawnWith (double seriesOhms, double gain)
{
    Card card;
    card.output = "out";
    const auto part = [&card] (const std::string& name, std::vector<std::string> nodes, const PartValue& value) {
        card.parts.push_back ({ name, std::move (nodes), value });
    };
    for (const int stop : { 0, 1 })
    {
        const auto number = std::to_string (stop);
        card.taps.push_back (triangle (stop == 0 ? "8" : "4").taps.front());
        card.taps.back().name += number;
        card.taps.back().node += number;
        part ("Rmix" + number, { "a" + number, "bus" }, Resistor { mixingOhms[stop] });
    }
    part ("Rload", { "bus", "0" }, Resistor { 1.0 / (1.0 / loadOhms - 1.0 / inputOhms) });
    part ("Cload", { "bus", "0" }, Capacitor { loadFarads });
    part ("Rseries", { "bus", "series" }, Resistor { std::max (seriesOhms, 1e-3) });
    part ("Cin", { "series", "in" }, Capacitor { couplingFarads });
    OpAmp amplifier;
    amplifier.gainBandwidthHz = 1e6;
    if (gain > 0.0)
    {
        part ("Rin", { "in", "0" }, Resistor { inputOhms });
        part ("Rfoot", { "minus", "0" }, Resistor { 1e3 });
        part ("Rback", { "minus", "out" }, Resistor { 1e3 * (gain - 1.0) });
        part ("U", { "in", "minus", "out" }, amplifier);
    }
    else
    {
        part ("Rin", { "in", "minus" }, Resistor { inputOhms });
        part ("Rback", { "minus", "out" }, Resistor { -gain * inputOhms });
        part ("U", { "0", "minus", "out" }, amplifier);
    }
    return card;
}

/// Room of that network, solved node by node for every partial up to 100 kHz and summed over time.
double drawnRoomDb (const TestOrgan& organ, double seriesOhms)
{
    constexpr std::size_t points = 8192;
    const PreampStage& stage = organ.instrument.preamps.front().stages.front();
    const Card card = drawnWith (seriesOhms, stage.gain);
    const SmallSignal network (netlistOf (card));
    const auto source = keySourceOf (organ.instrument, "Upper", card);
    const auto partials = tapPartials (card, source, key, 100e3);
    const double baseHz = partials.front().frequencyHz;
    std::vector<double> sine (points);
    for (std::size_t point = 0; point < points; ++point)
        sine[point] = std::sin (2.0 * std::numbers::pi * static_cast<double> (point) / static_cast<double> (points));
    std::vector<double> wave (points);
    for (const TapPartial& partial : partials)
    {
        const auto peak = partial.volts * network.responses ("out", partial.frequencyHz)[partial.tap];
        const auto turns = static_cast<std::size_t> (std::lround (partial.frequencyHz / baseHz));
        for (std::size_t point = 0; point < points; ++point)
            wave[point] +=
                peak.real() * sine[turns * point % points] + peak.imag() * sine[(turns * point + points / 4) % points];
    }
    const auto [low, high] = std::ranges::minmax (wave);
    return peakRoomDb (low, high, *stage.rails);
}

} // namespace

TEST (HeadroomRemedies, ASeriesResistorRestoresTheMarginInTheWholeCircuit)
{
    for (const double gain : { 30.0, -8.0 })
    {
        const auto organ = bareWire (gain);
        const auto stage = stagesOf (organ).at (1);
        ASSERT_NEAR (stage.roomDb, 1.0, 1e-6);
        EXPECT_NEAR (drawnRoomDb (organ, 0.0), stage.roomDb, 0.2) << "the coupling corner differs a little";
        const auto series = wantedOf (stage, Kind::seriesOhms);
        ASSERT_TRUE (series);
        EXPECT_NEAR (drawnRoomDb (organ, *series), marginDb, 0.01) << gain << ": " << *series;
        const double withoutSource = inputOhms * (fromDecibels (marginDb - stage.roomDb) - 1.0);
        EXPECT_LT (drawnRoomDb (organ, withoutSource), marginDb - 0.05) << "the source in front counts";
    }
}

// Behind a virtual earth there is no source resistance, and the document can say what the resistor does.
TEST (HeadroomRemedies, BandwidthsAndCornersThatMoveCount)
{
    MixingBus bus;
    bus.gainBandwidthHz = 30e3;
    bus.rails = SupplyRails { -0.5, 0.5 };
    auto organ = emptyOrgan (bus);
    organ.add ("Square", bareCard ("8"));
    organ.add ("Octave", bareCard ("4"));
    auto& stage = organ.instrument.preamps.front().stages.emplace_back();
    organ.cards.ofStages.front().emplace_back();
    stage.gain = -4.0;
    stage.gainBandwidthHz = 30e3;
    stage.coupling = Coupling { 22e-9, inputOhms };
    stage.rails = SupplyRails { -2.0, 2.0 };
    const auto stages = stagesOf (organ);
    for (const std::size_t at : { std::size_t { 0 }, std::size_t { 1 } })
        for (const HeadroomRemedy& remedy : stages[at].remedies)
        {
            auto cured = organ;
            auto& changed = cured.instrument.preamps.front().stages.front();
            if (remedy.kind == Kind::feedbackOhms)
                cured.instrument.mixingBuses.front().feedbackOhms = remedy.wanted;
            else if (remedy.kind == Kind::gain)
                changed.gain = remedy.wanted;
            else
            {
                changed.coupling->inputOhms += remedy.wanted;
                changed.gain *= inputOhms / changed.coupling->inputOhms;
            }
            EXPECT_NEAR (stagesOf (cured)[at].roomDb, marginDb, 0.002) << at << ' ' << static_cast<int> (remedy.kind);
        }
    EXPECT_EQ (stages[0].remedies.size(), 1U);
    ASSERT_EQ (stages[1].remedies.size(), 2U);
    const double times = fromDecibels (marginDb - stages[1].roomDb);
    EXPECT_GT (std::abs (toDecibels (*wantedOf (stages[1], Kind::seriesOhms) / (inputOhms * (times - 1.0)))), 0.05)
        << "the divider alone would miss it";
}

// A network of 20 k in front: (47 k + 20 k) (times - 1).
TEST (HeadroomRemedies, ANetworkInFrontIsASource)
{
    MixingBus bus;
    auto organ = emptyOrgan (bus);
    organ.add ("Square", bareCard ("8"));
    auto& stages = organ.instrument.preamps.front().stages;
    stages.resize (2);
    stages[0].name = "Network";
    stages[0].kind = StageKind::circuit;
    stages[1].name = "Gain";
    stages[1].coupling = Coupling { 1.0, inputOhms }; // a farad: flat
    stages[1].rails = SupplyRails { -0.5, 0.5 };
    auto network = bareCard();
    network.parts.push_back ({ "R1", { "a", "out" }, Resistor { 20e3 } });
    network.output = "out";
    organ.cards.ofStages.front() = { network, std::nullopt };
    const auto found = stagesOf (organ).at (2);
    const auto series = wantedOf (found, Kind::seriesOhms);
    ASSERT_TRUE (series);
    EXPECT_NEAR (*series, (inputOhms + 20e3) * (fromDecibels (marginDb - found.roomDb) - 1.0), 1.0);
}

} // namespace stopwright::test
