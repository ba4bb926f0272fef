// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/TestRail.h"

#include <algorithm>
#include <cmath>
#include <random>
#include <utility>

namespace stopwright::test
{

namespace
{

void addPart (Netlist& netlist, const std::string& name, std::vector<std::string> nodes, const PartValue& value)
{
    netlist.parts.push_back ({ name, std::move (nodes), value });
}

void add (const BusBranch& branch, BusNode::Stops& stops)
{
    for (std::size_t sample = 0; sample < stops.amps.size(); ++sample)
    {
        stops.amps[sample] += branch.conductance() * branch.free()[sample];
        stops.kernel[sample] += branch.conductance() * branch.kernel()[sample];
    }
    stops.siemens += branch.conductance();
}

} // namespace

TestRail::TestRail (const std::vector<Netlist>& networks, const std::vector<double>& mixingOhms, const MixingBus& bus)
    : node_ (bus, rateHz)
{
    for (std::size_t stop = 0; stop < networks.size(); ++stop)
        branches_.push_back (std::make_unique<BusBranch> (networks[stop], mixingOhms[stop], rateHz));
}

std::vector<double> TestRail::run (const std::vector<std::vector<double>>& sources)
{
    std::vector<double> out;
    const auto frames = sources.front().size();
    for (std::size_t start = 0; start + BusNode::length <= frames; start += BusNode::length)
    {
        moveKnobs();
        BusNode::Stops stops;
        for (std::size_t stop = 0; stop < branches_.size(); ++stop)
        {
            std::copy_n (sources[stop].begin() + static_cast<std::ptrdiff_t> (start), BusNode::length,
                         branches_[stop]->samplesOf (0).begin());
            branches_[stop]->begin();
            add (*branches_[stop], stops);
        }
        BusNode::Samples busVolts {};
        BusNode::Samples heard {};
        node_.stand (stops);
        node_.solve (stops.amps, busVolts, heard);
        for (const auto& branch : branches_)
            branch->finish (busVolts);
        out.insert (out.end(), heard.begin(), heard.end());
    }
    return out;
}

void TestRail::moveKnobs()
{
    bool isChanged = false;
    for (const auto& branch : branches_)
        isChanged = branch->moveKnobs() || isChanged;
    if (! isChanged)
        return;
    BusNode::Instant instant;
    for (const auto& branch : branches_)
    {
        instant.amps += branch->conductance() * branch->presentFree();
        instant.kernel += branch->conductance() * branch->presentKernel();
        instant.siemens += branch->conductance();
    }
    const double volts = node_.settle (instant);
    for (const auto& branch : branches_)
        branch->setBusVolts (volts);
}

Netlist stopNetwork (int index, const std::string& tag)
{
    Netlist netlist;
    const double spread = 1.0 + 0.13 * index;
    netlist.sources.push_back ({ "W" + tag, "in" + tag, 1000.0 });
    addPart (netlist, "R" + tag, { "in" + tag, "out" + tag }, Resistor { 22e3 * spread });
    switch (index % 3)
    {
        case 0:
            addPart (netlist, "C" + tag, { "out" + tag, "0" }, Capacitor { 4.7e-9 * spread });
            break;
        case 1:
            addPart (netlist, "C" + tag, { "out" + tag, "0" }, Capacitor { 22e-9 / spread });
            addPart (netlist, "L" + tag, { "out" + tag, "0" }, Inductor { 1.0 * spread, 150.0, 0.0 });
            break;
        default:
            addPart (netlist, "C" + tag, { "in" + tag, "out" + tag }, Capacitor { 10e-9 * spread });
            addPart (netlist, "Q" + tag, { "out" + tag, "0" }, Resistor { 47e3 * spread });
            break;
    }
    netlist.output = "out" + tag;
    return netlist;
}

Netlist wholeRail (const std::vector<Netlist>& networks, const std::vector<double>& mixingOhms, const MixingBus& bus)
{
    Netlist whole;
    for (std::size_t stop = 0; stop < networks.size(); ++stop)
    {
        const auto& network = networks[stop];
        whole.sources.insert (whole.sources.end(), network.sources.begin(), network.sources.end());
        whole.parts.insert (whole.parts.end(), network.parts.begin(), network.parts.end());
        addPart (whole, "Rm" + std::to_string (stop), { network.output, "bus" }, Resistor { mixingOhms[stop] });
    }
    if (bus.kind == BusKind::passive)
    {
        addPart (whole, "Rl", { "bus", "0" }, Resistor { bus.loadOhms });
        if (bus.loadFarads > 0.0)
            addPart (whole, "Cl", { "bus", "0" }, Capacitor { bus.loadFarads });
        whole.output = "bus";
        return whole;
    }
    addPart (whole, "Rf", { "sum", "bus" }, Resistor { bus.feedbackOhms });
    OpAmp amplifier;
    amplifier.gainBandwidthHz = bus.gainBandwidthHz;
    addPart (whole, "U", { "0", "bus", "sum" }, amplifier);
    whole.output = "sum";
    return whole;
}

std::vector<std::vector<double>> noise (std::size_t channels, std::size_t frames)
{
    std::mt19937 generator (7);
    std::uniform_real_distribution<double> uniform (-1.0, 1.0);
    std::vector<std::vector<double>> signals (channels, std::vector<double> (frames));
    for (auto& signal : signals)
        for (double& sample : signal)
            sample = uniform (generator);
    return signals;
}

double largestDifference (const std::vector<double>& a, const std::vector<double>& b)
{
    double largest = 0.0;
    for (std::size_t i = 0; i < std::min (a.size(), b.size()); ++i)
        largest = std::max (largest, std::abs (a[i] - b[i]));
    return largest;
}

} // namespace stopwright::test
