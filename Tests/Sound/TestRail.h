// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/BusBranch.h"
#include "Sound/BusNode.h"

#include <memory>
#include <string>
#include <vector>

namespace stopwright::test
{

/// Stops on one bus, each with one source, at 192 kHz.
class TestRail
{
public:
    static constexpr double rateHz = 192000.0;

    TestRail (const std::vector<Netlist>& networks, const std::vector<double>& mixingOhms, const MixingBus& bus);

    BusBranch& branch (std::size_t stop) { return *branches_[stop]; }

    /// What is heard of the bus while sources[i] feed the stops, in whole blocks.
    std::vector<double> run (const std::vector<std::vector<double>>& sources);

private:
    void moveKnobs();

    BusNode node_;
    std::vector<std::unique_ptr<BusBranch>> branches_;
};

/// A low-pass, a resonant and a high-pass network by turns, with values of their own; nodes and parts end in `tag`.
Netlist stopNetwork (int index, const std::string& tag);

/// The entire rail as one network.
Netlist wholeRail (const std::vector<Netlist>& networks, const std::vector<double>& mixingOhms, const MixingBus& bus);

/// The output of a circuit for these sources: LinearCircuit or NonlinearCircuit.
template <typename Circuit>
std::vector<double> runWhole (Circuit& circuit, const std::vector<std::vector<double>>& sources)
{
    std::vector<const double*> in;
    for (const auto& source : sources)
        in.push_back (source.data());
    std::vector<double> out (sources.front().size());
    double* const outs[] = { out.data() };
    circuit.process (in, outs, static_cast<int> (out.size()));
    return out;
}

/// Uniform within +-1, the same each time.
std::vector<std::vector<double>> noise (std::size_t channels, std::size_t frames);

double largestDifference (const std::vector<double>& a, const std::vector<double>& b);

} // namespace stopwright::test
