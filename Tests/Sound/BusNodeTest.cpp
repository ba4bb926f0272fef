// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/BusNode.h"

#include "Circuit/CheckedBuilder.h"
#include "Circuit/KnobRamp.h"
#include "Circuit/LinearCircuit.h"
#include "Circuit/SteppedNetwork.h"
#include "Sound/TestRail.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <ostream>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

namespace stopwright::test
{

namespace
{

constexpr double rateHz = TestRail::rateHz;
constexpr double movedFarads = 47e-9;
constexpr double movedOhms = 330e3;

double mixingOhmsOf (int index)
{
    return 33e3 + 4.1e3 * index;
}

struct BusCase
{
    std::string name;
    MixingBus bus;

    friend std::ostream& operator<< (std::ostream& out, const BusCase& bus) { return out << bus.name; }
};

std::vector<BusCase> busCases()
{
    MixingBus passive;
    passive.kind = BusKind::passive;
    MixingBus loom = passive;
    loom.loadFarads = 1e-9;
    MixingBus ideal;
    MixingBus fast;
    fast.gainBandwidthHz = 1e6;
    MixingBus slow;
    slow.gainBandwidthHz = 30e3;
    return { { "passive", passive }, { "loom", loom }, { "ideal", ideal }, { "fast", fast }, { "slow", slow } };
}

class BusNodeOfEachKind : public testing::TestWithParam<BusCase>
{};

constexpr int stopCount = 7;

std::vector<Netlist> sevenStops()
{
    std::vector<Netlist> networks;
    for (int stop = 0; stop < stopCount; ++stop)
        networks.push_back (stopNetwork (stop, std::to_string (stop)));
    return networks;
}

std::vector<double> sevenMixingOhms()
{
    std::vector<double> ohms;
    for (int stop = 0; stop < stopCount; ++stop)
        ohms.push_back (mixingOhmsOf (stop));
    return ohms;
}

} // namespace

// The rail stop by stop against all of it in one matrix: the same circuit, the same trapezoidal rule.
TEST_P (BusNodeOfEachKind, IsTheWholeRailInOneMatrix)
{
    const auto signals = noise (stopCount, 4096);
    TestRail rail (sevenStops(), sevenMixingOhms(), GetParam().bus);
    LinearCircuit whole (wholeRail (sevenStops(), sevenMixingOhms(), GetParam().bus),
                         { wholeRail (sevenStops(), sevenMixingOhms(), GetParam().bus).output }, rateHz);
    const auto expected = runWhole (whole, signals);
    const double peak = *std::max_element (expected.begin(), expected.end());
    EXPECT_LT (largestDifference (rail.run (signals), expected), 1e-9 * peak);
}

namespace
{

/// The entire rail in one matrix, with a value of a stop's network and a mixing resistor on their way: the network in steps
/// of sixteen samples, the resistor of eight.
std::vector<double> runWholeWhileItMoves (const Netlist& netlist, const std::vector<std::vector<double>>& sources)
{
    SteppedNetwork network (checkedBuilder (netlist, { netlist.output }, rateHz), rateHz);
    const KnobTable& knobs = network.builder().knobs();
    const auto capacitor = static_cast<std::size_t> (*knobs.find ("C1", KnobKind::value));
    const auto resistor = static_cast<std::size_t> (*knobs.find ("Rm2", KnobKind::value));
    auto values = knobs.values();
    KnobRamp farads (values[capacitor]);
    KnobRamp ohms (values[resistor]);
    farads.moveTo (movedFarads, static_cast<int> (LinearCircuit::rampSeconds * rateHz) / 16, false);
    ohms.moveTo (movedOhms, static_cast<int> (BusBranch::mixingRampSeconds * rateHz) / BusNode::length, false);

    std::vector<const double*> in;
    for (const auto& source : sources)
        in.push_back (source.data());
    std::vector<double> out (sources.front().size());
    double* const outs[] = { out.data() };
    for (int frame = 0; frame < static_cast<int> (out.size()); frame += BusNode::length)
    {
        ohms.advance();
        if (frame % 16 == 0)
            farads.advance();
        values[capacitor] = farads.value();
        values[resistor] = ohms.value();
        network.build (values);
        network.run (in.data(), outs, frame, BusNode::length, false);
    }
    return out;
}

} // namespace

TEST_P (BusNodeOfEachKind, IsTheWholeRailWhileValuesMove)
{
    const auto signals = noise (stopCount, 8192);
    TestRail rail (sevenStops(), sevenMixingOhms(), GetParam().bus);
    rail.branch (1).setKnobTarget (*rail.branch (1).findKnob ({ "C1", KnobKind::value }), movedFarads);
    rail.branch (2).setKnobTarget (rail.branch (2).mixingKnob(), movedOhms);
    const auto expected = runWholeWhileItMoves (wholeRail (sevenStops(), sevenMixingOhms(), GetParam().bus), signals);
    const double peak = *std::max_element (expected.begin(), expected.end());
    EXPECT_LT (largestDifference (rail.run (signals), expected), 1e-9 * peak);
}

INSTANTIATE_TEST_SUITE_P (Buses,
                          BusNodeOfEachKind,
                          testing::ValuesIn (busCases()),
                          [] (const auto& bus) { return bus.param.name; });

namespace
{

/// A source and nothing else: its mixing resistor is all it has.
Netlist bareSource()
{
    Netlist netlist;
    netlist.sources.push_back ({ "W", "a", 0.0 });
    netlist.output = "a";
    return netlist;
}

/// The level of the first source in dB, the others at rest.
double levelOfFirst (const std::vector<double>& mixingOhms, const MixingBus& bus)
{
    TestRail rail (std::vector<Netlist> (mixingOhms.size(), bareSource()), mixingOhms, bus);
    std::vector<std::vector<double>> signals (mixingOhms.size(), std::vector<double> (64, 0.0));
    signals.front().assign (64, 1.0);
    return 20.0 * std::log10 (std::abs (rail.run (signals).back()));
}

MixingBus passiveBus (double loadOhms)
{
    MixingBus bus;
    bus.kind = BusKind::passive;
    bus.loadOhms = loadOhms;
    return bus;
}

} // namespace

// Kirchhoff's current law: one of N sources of R into a load reaches (1/R) / (N/R + 1/RL) of its volts.
TEST (BusNodeTest, OneOfManyStopsOnAPassiveBus)
{
    for (const double load : { 10e3, 100e3, 1e6 })
        for (const int count : { 1, 2, 5, 8, 9, 10 })
        {
            const std::vector<double> ohms (static_cast<std::size_t> (count), 47e3);
            const double expected = 20.0 * std::log10 ((1.0 / 47e3) / (count / 47e3 + 1.0 / load));
            EXPECT_NEAR (levelOfFirst (ohms, passiveBus (load)), expected, 1e-9) << count << " into " << load;
        }
}

// Numbers worked out beforehand for 47 k sources into 100 k (closed form above, to the third decimal).
TEST (BusNodeTest, KnownLevelsOnAPassiveBus)
{
    const std::vector<std::pair<std::size_t, double>> levels { { 1, -3.346 },  { 2, -7.854 },  { 5, -14.760 },
                                                               { 8, -18.558 }, { 9, -19.527 }, { 10, -20.399 } };
    for (const auto& [count, decibels] : levels)
        EXPECT_NEAR (levelOfFirst (std::vector<double> (count, 47e3), passiveBus (100e3)), decibels, 5e-4) << count;
}

// A stop 5.4 dB under what a 47 k one in its place would give: on a virtual earth its resistor alone decides,
// 47 k x 10^(5.4/20); as a ninth on a passive bus of eight 47 k into 100 k it also loads less, so 92.3 k. Closed forms
// from Kirchhoff's current law.
TEST (BusNodeTest, AMixingResistorForAWantedLevel)
{
    const MixingBus earth;
    const double neighbour = levelOfFirst ({ 47e3 }, earth);
    EXPECT_NEAR (levelOfFirst ({ 87518.0 }, earth) - neighbour, -5.4, 1e-3);
    EXPECT_NEAR (levelOfFirst ({ 91e3 }, earth) - neighbour, -5.739, 1e-3);
    EXPECT_NEAR (levelOfFirst ({ 82e3 }, earth) - neighbour, -4.834, 1e-3);

    const auto bus = passiveBus (100e3);
    const std::vector<double> eight (8, 47e3);
    const std::vector<double> nine (9, 47e3);
    for (const auto& [ohms, level, loss] : { std::tuple { 91e3, -5.284, -0.514 }, std::tuple { 82e3, -4.434, -0.569 },
                                             std::tuple { 92.3e3, -5.4, -0.507 } })
    {
        auto rail = eight;
        rail.push_back (ohms);
        EXPECT_NEAR (levelOfFirst (rail, bus) - levelOfFirst (eight, bus), loss, 1e-3) << ohms;
        std::swap (rail.front(), rail.back());
        EXPECT_NEAR (levelOfFirst (rail, bus) - levelOfFirst (nine, bus), level, 2e-3) << ohms;
    }
}

} // namespace stopwright::test
