// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/WholeRailCard.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stopwright::test
{

namespace
{

class RailDrawing
{
public:
    explicit RailDrawing (const TestOrgan& organ) : organ_ (organ) {}

    Card draw (const std::string& division)
    {
        card_.name = "Whole rail";
        card_.output = "out";
        for (const Preamp& preamp : organ_.instrument.preamps)
            drawPreamp (preamp, division);
        part ("Rsum", { "sum", "out" }, Resistor { 10e3 });
        part ("Usum", { "0", "sum", "out" }, OpAmp {});
        return card_;
    }

private:
    void part (const std::string& name, std::vector<std::string> nodes, const PartValue& value)
    {
        card_.parts.push_back ({ name, std::move (nodes), value });
    }

    std::string fresh (const std::string& word) { return word + std::to_string (++count_); }

    void drawPreamp (const Preamp& preamp, const std::string& division)
    {
        const auto& buses = organ_.instrument.mixingBuses;
        const MixingBus& bus = *std::ranges::find (buses, preamp.bus, &MixingBus::name);
        const auto busNode = fresh ("bus");
        if (! drawStops (bus, busNode, division))
            return;

        auto node = fresh ("stage");
        if (bus.kind == BusKind::passive)
        {
            part (fresh ("R"), { busNode, "0" }, Resistor { bus.loadOhms });
            if (bus.loadFarads > 0.0)
                part (fresh ("C"), { busNode, "0" }, Capacitor { bus.loadFarads });
            part (fresh ("U"), { busNode, node, node }, OpAmp {});
        }
        else
        {
            OpAmp amplifier;
            amplifier.gainBandwidthHz = bus.gainBandwidthHz;
            part (fresh ("R"), { node, busNode }, Resistor { bus.feedbackOhms });
            part (fresh ("U"), { "0", busNode, node }, amplifier);
        }
        for (const PreampStage& stage : preamp.stages)
            node = drawStage (stage, node);
        // The summing amplifier turns round once more, so that two inversions make none.
        node = drawGain (-1.0, node);
        part (fresh ("R"), { node, "sum" }, Resistor { 10e3 });
    }

    /// Returns whether any stop on it is drawn.
    bool drawStops (const MixingBus& bus, const std::string& busNode, const std::string& division)
    {
        bool isAnyDrawn = false;
        for (std::size_t index = 0; index < organ_.instrument.stops.size(); ++index)
        {
            const StopTablet& stop = organ_.instrument.stops[index];
            if (stop.bus != bus.name || ! organ_.cards.ofStops[index])
                continue;
            const bool isDrawn = stop.drawn && stop.division == division;
            isAnyDrawn = isAnyDrawn || isDrawn;
            if (isDrawn)
                drawStop (stop, *organ_.cards.ofStops[index], busNode);
            else if (stop.whenRetired == WhenRetired::grounded)
                part (fresh ("R"), { busNode, "0" }, Resistor { stop.mixingOhms });
        }
        return isAnyDrawn;
    }

    void drawStop (const StopTablet& stop, const Card& from, const std::string& busNode)
    {
        const auto tag = fresh ("s");
        const auto own = [&tag] (const std::string& node) { return node == commonNode ? node : tag + node; };
        for (Tap tap : from.taps)
        {
            tap.name = tag + tap.name;
            tap.node = own (tap.node);
            tap.polarity *= stop.polarity;
            card_.taps.push_back (tap);
        }
        for (Part copy : from.parts)
        {
            copy.name = tag + copy.name;
            std::ranges::transform (copy.nodes, copy.nodes.begin(), own);
            card_.parts.push_back (copy);
        }
        part (fresh ("R"), { own (from.output), busNode }, Resistor { stop.mixingOhms });
    }

    std::string drawStage (const PreampStage& stage, std::string node)
    {
        if (stage.coupling)
        {
            const auto input = fresh ("coupled");
            const auto buffered = fresh ("stage");
            part (fresh ("C"), { node, input }, Capacitor { stage.coupling->farads });
            part (fresh ("R"), { input, "0" }, Resistor { stage.coupling->inputOhms });
            part (fresh ("U"), { input, buffered, buffered }, OpAmp {});
            node = buffered;
        }
        if (stage.kind == StageKind::follower)
            return node;
        node = drawGain (stage.gain, node);
        if (! stage.gainBandwidthHz)
            return node;
        constexpr double ohms = 1000.0;
        const double cornerHz = *stage.gainBandwidthHz / noiseGainOf (stage);
        const auto slowed = fresh ("slowed");
        const auto buffered = fresh ("stage");
        part (fresh ("R"), { node, slowed }, Resistor { ohms });
        part (fresh ("C"), { slowed, "0" }, Capacitor { 1.0 / (2.0 * std::numbers::pi * ohms * cornerHz) });
        part (fresh ("U"), { slowed, buffered, buffered }, OpAmp {});
        return buffered;
    }

    std::string drawGain (double gain, const std::string& node)
    {
        constexpr double ohms = 10e3;
        const auto input = fresh ("minus");
        const auto output = fresh ("stage");
        part (fresh ("R"), { node, input }, Resistor { ohms });
        part (fresh ("R"), { input, output }, Resistor { ohms * std::abs (gain) });
        part (fresh ("U"), { "0", input, output }, OpAmp {});
        return gain < 0.0 ? output : drawGain (-1.0, output);
    }

    const TestOrgan& organ_;
    Card card_;
    int count_ = 0;
};

} // namespace

Card wholeRailCard (const TestOrgan& organ, const std::string& division)
{
    return RailDrawing (organ).draw (division);
}

} // namespace stopwright::test
