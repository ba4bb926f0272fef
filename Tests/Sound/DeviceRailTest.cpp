// SPDX-License-Identifier: GPL-3.0-or-later
//
// Stops with diodes and transistors on a bus with others.
#include "Circuit/NonlinearCircuit.h"
#include "Organ/WholeRailCard.h"
#include "Sound/InstrumentVoice.h"
#include "Sound/RailBus.h"
#include "Sound/TestCards.h"
#include "Sound/TestRail.h"
#include "Sound/TestVoice.h"
#include "Sound/ToneRack.h"

#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <string>
#include <vector>

namespace stopwright::test
{

namespace
{

constexpr int upper = 0;
constexpr int a3 = 57;

/// A square into two diodes back to back, which hold the output within half a volt or so.
Card clippedCard()
{
    Card card = bareCard ("8", 8.0);
    card.name = "Clipped";
    card.parts.push_back ({ "R1", { "a", "out" }, Resistor { 4.7e3 } });
    card.parts.push_back ({ "C1", { "out", "0" }, Capacitor { 10e-9 } });
    card.parts.push_back ({ "D1", { "out", "0" }, Diode { .saturationAmps = 1e-9, .emissionCoefficient = 1.8 } });
    card.parts.push_back ({ "D2", { "0", "out" }, Diode { .saturationAmps = 1e-9, .emissionCoefficient = 1.8 } });
    card.output = "out";
    return card;
}

MixingBus busWith (double farads)
{
    MixingBus bus;
    bus.kind = BusKind::passive;
    bus.loadOhms = 22e3;
    bus.loadFarads = farads;
    return bus;
}

/// Two clipped stops and a linear one, whose mixing resistors are low enough for each to feel the others.
TestOrgan organOn (const MixingBus& bus)
{
    auto organ = emptyOrgan (bus);
    organ.add ("Clipped one", clippedCard(), "Upper", "Bus", 10e3);
    organ.add ("Clipped two", clippedCard(), "Upper", "Bus", 15e3);
    organ.add ("Reed", presetCard ("Krummhorn8"), "Upper", "Bus", 4.7e3);
    return organ;
}

/// The tone that the stops of the upper manual hear, and the bus by itself, at 192 kHz.
struct BareRail
{
    explicit BareRail (const TestOrgan& organ)
        : tones (organ.instrument, organ.cards, TestRail::rateHz, RailStop::length, 0),
          bus (organ.instrument.mixingBuses.front(), TestRail::rateHz)
    {
        for (std::size_t stop = 0; stop < organ.instrument.stops.size(); ++stop)
        {
            stops.push_back (std::make_unique<RailStop> (organ.instrument.stops[stop], *organ.cards.ofStops[stop],
                                                         tones.tonesOf (stop), TestRail::rateHz));
            bus.addStop (*stops.back());
        }
        tones.key (upper, a3, true, 0);
    }

    /// A block of the bus; the volts of every tap are appended to `taps`, stop by stop.
    void process (const TestOrgan& organ, std::vector<std::vector<double>>& taps, std::vector<double>& out)
    {
        tones.render (0, RailStop::length);
        std::size_t source = 0;
        for (std::size_t stop = 0; stop < stops.size(); ++stop)
            for (std::size_t tap = 0; tap < tones.tonesOf (stop).size(); ++tap, ++source)
                for (int sample = 0; sample < RailStop::length; ++sample)
                    taps[source].push_back (organ.cards.ofStops[stop]->taps[tap].voltsPeakToPeak
                                            * tones.tonesOf (stop)[tap]->volts()[sample]);
        BusNode::Samples volts {};
        bus.process (0, volts.data());
        out.insert (out.end(), volts.begin(), volts.end());
    }

    ToneRack tones;
    RailBus bus;
    std::vector<std::unique_ptr<RailStop>> stops;
};

} // namespace

// All of it as one network with four diodes, by the same trapezoidal rule: only the way the same equations are solved
// differs, so the bound is that of the two searches.
TEST (DeviceRail, IsTheWholeRailInOneNetwork)
{
    for (const double farads : { 0.0, 2.2e-9 })
    {
        const auto organ = organOn (busWith (farads));
        BareRail rail (organ);
        const Card whole = wholeRailCard (organ, "Upper");
        std::vector<std::vector<double>> taps (whole.taps.size());
        std::vector<double> out;
        for (int block = 0; block < 2000; ++block)
            rail.process (organ, taps, out);

        const Netlist netlist = netlistOf (whole);
        NonlinearCircuit circuit (netlist, { "bus1" }, TestRail::rateHz);
        const auto expected = runWhole (circuit, taps);
        EXPECT_LT (largestDifference (out, expected), 1e-6 * peakOf (expected)) << farads;
        EXPECT_GT (peakOf (expected), 0.1);
        EXPECT_EQ (circuit.fallbackCount(), 0);
    }
}

// On an ideal virtual earth the bus stands still, so what a stop sends there is what it sends alone into its mixing
// resistor: 47 k of it turned into volts by 47 k.
TEST (DeviceRail, OnAVirtualEarthAStopSoundsAsAlone)
{
    auto organ = emptyOrgan ({});
    organ.add ("Clipped", clippedCard(), "Upper", "Bus", 47e3);
    organ.add ("Reed", presetCard ("Krummhorn8"), "Lower", "Bus", 47e3);
    InstrumentVoice voice (organ.instrument, organ.cards, StreamSpec {});
    voice.key (upper, a3, true, 0);
    renderVoice (voice, 9600);
    const auto heard = renderVoice (voice, 9600);

    Card alone = clippedCard();
    alone.parts.push_back ({ "Rm", { "out", "0" }, Resistor { 47e3 } });
    CardVoice card (alone, keySourceForCardAlone (alone), StreamSpec {});
    const auto expected = renderVolts (card, 19200, { { 0, a3, true } });
    EXPECT_NEAR (peakOf (heard) / peakOf (std::span (expected).subspan (9600)), 1.0, 1e-3);
    EXPECT_LT (peakOf (heard), 1.0);
}

TEST (DeviceRail, DrawsTurnsAndGoesOn)
{
    const auto organ = organOn (busWith (1e-9));
    InstrumentVoice voice (organ.instrument, organ.cards, StreamSpec {});
    voice.key (upper, a3, true, 0);
    renderVoice (voice, 9600);
    for (const double drawn : { 0.0, 1.0 })
    {
        voice.setControl (*voice.findDraw ("Clipped one"), drawn);
        EXPECT_TRUE (voice.controlsMove());
        EXPECT_LT (peakOf (renderVoice (voice, 9600)), 1.0);
        EXPECT_FALSE (voice.controlsMove());
    }
    voice.setControl (*voice.findMixingKnob ("Clipped two"), 1e3);
    voice.setControl (*voice.findKnob ("Clipped two", { "R1", KnobKind::value }), 100e3);
    EXPECT_LT (peakOf (renderVoice (voice, 9600)), 1.0);
    EXPECT_FALSE (voice.hasFault());

    InstrumentVoice next (organ.instrument, organ.cards, StreamSpec {});
    next.adopt (voice, next.prepareAdoption (voice).get());
    EXPECT_GT (peakOf (renderVoice (next, 4800)), 0.01);
}

} // namespace stopwright::test
