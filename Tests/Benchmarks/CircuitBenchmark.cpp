// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/BlockStep.h"
#include "Circuit/CayleyStep.h"
#include "Circuit/StateSpaceBuilder.h"

#include <Eigen/Core>
#include <algorithm>
#include <benchmark/benchmark.h>
#include <cmath>
#include <string>
#include <vector>

namespace stopwright
{

namespace
{

constexpr double sampleRateHz = 192000.0;
constexpr int frameCount = 256;

// Appending keeps g++ 12 from a false warning about overlapping copies.
std::string numbered (const std::string& letters, int number)
{
    return std::string (letters).append (std::to_string (number));
}

Part makePart (const std::string& name, const std::string& a, const std::string& b, const PartValue& value)
{
    return { name, { a, b }, value, 0.0 };
}

/// A shunt-capacitor-first ladder between equal resistances, alternating capacitors and coils.
Netlist ladder (int order)
{
    Netlist netlist;
    netlist.sources.push_back ({ "in", "n0", 1e3 });
    int node = 0;
    for (int k = 0; k < order; ++k)
    {
        const std::string here = numbered ("n", node);
        if (k % 2 == 0)
            netlist.parts.push_back (makePart (numbered ("C", k), here, "0", Capacitor { 100e-9 }));
        else
            netlist.parts.push_back (makePart (numbered ("L", k), here, numbered ("n", ++node), Inductor { 0.1 }));
    }
    netlist.output = numbered ("n", node);
    netlist.parts.push_back (makePart ("R1", netlist.output, "0", Resistor { 1e3 }));
    return netlist;
}

/// 24 nodes besides common, 47 resistors and eight capacitors.
Netlist largeCard()
{
    Netlist netlist;
    netlist.sources.push_back ({ "in", "n1", 0.0 });
    for (int node = 1; node < 24; ++node)
    {
        const std::string next = numbered ("n", node + 1);
        netlist.parts.push_back (
            makePart (numbered ("R", node), numbered ("n", node), next, Resistor { 4.7e3 + 1e3 * node }));
        netlist.parts.push_back (makePart (numbered ("G", node), next, "0", Resistor { 220e3 }));
        if (node % 3 == 0)
            netlist.parts.push_back (makePart (numbered ("C", node), next, "0", Capacitor { 10e-9 / node }));
    }
    netlist.parts.push_back (makePart ("C1", "n2", "n5", Capacitor { 1e-9 }));
    netlist.output = "n24";
    return netlist;
}

struct Prepared
{
    explicit Prepared (const Netlist& netlist)
        : builder (netlist, { netlist.output }),
          network (builder.makeStateSpace()),
          step (builder.stateCount(), builder.sourceCount(), builder.outputCount(), sampleRateHz),
          block (builder.stateCount(), builder.sourceCount(), builder.outputCount()),
          values (builder.knobs().values()),
          states (static_cast<std::size_t> (builder.stateCount()), 0.0),
          last (static_cast<std::size_t> (builder.sourceCount()), 0.0),
          input (frameCount),
          output (frameCount)
    {
        builder.build (values, network);
        step.build (network);
        block.build (step);
        for (std::size_t frame = 0; frame < input.size(); ++frame)
            input[frame] = std::sin (0.1 * static_cast<double> (frame));
    }

    StateSpaceBuilder builder;
    StateSpace network;
    CayleyStep step;
    BlockStep block;
    std::vector<double> values, states, last, input, output;
};

void perSample (benchmark::State& state)
{
    state.SetItemsProcessed (state.iterations() * frameCount);
    state.counters["ns/sample"] = benchmark::Counter (static_cast<double> (state.iterations()) * frameCount * 1e-9,
                                                      benchmark::Counter::kIsRate | benchmark::Counter::kInvert);
}

template <int order>
void runBlocks (benchmark::State& state)
{
    Prepared card (ladder (order));
    const double* sources[] = { card.input.data() };
    double* outputs[] = { card.output.data() };
    for ([[maybe_unused]] auto _ : state)
    {
        card.block.run (card.states.data(), card.last.data(), sources, outputs, 0,
                        frameCount / card.block.blockLength());
        benchmark::DoNotOptimize (card.output.data());
        benchmark::ClobberMemory();
    }
    perSample (state);
}

template <int order>
void runSamples (benchmark::State& state)
{
    Prepared card (ladder (order));
    const double* sources[] = { card.input.data() };
    double* outputs[] = { card.output.data() };
    for ([[maybe_unused]] auto _ : state)
    {
        card.step.run (card.states.data(), card.last.data(), sources, outputs, 0, frameCount);
        benchmark::DoNotOptimize (card.output.data());
        benchmark::ClobberMemory();
    }
    perSample (state);
}

/// The step as one writes it with matrices of fixed size, for comparison.
template <int order>
void runEigen (benchmark::State& state)
{
    Prepared card (ladder (order));
    const Eigen::Matrix<double, order, order> transition = card.step.transition();
    const Eigen::Matrix<double, order, 1> fromLast = card.step.fromLast();
    const Eigen::Matrix<double, order, 1> fromPresent = card.step.fromPresent();
    const Eigen::Matrix<double, 1, order> heard = card.step.c();
    const double direct = card.step.d() (0, 0);
    Eigen::Matrix<double, order, 1> x = Eigen::Matrix<double, order, 1>::Zero();
    double last = 0.0;
    for ([[maybe_unused]] auto _ : state)
    {
        for (std::size_t frame = 0; frame < card.input.size(); ++frame)
        {
            const double present = card.input[frame];
            x = transition * x + fromLast * last + fromPresent * present;
            card.output[frame] = heard.dot (x) + direct * present;
            last = present;
        }
        benchmark::DoNotOptimize (card.output.data());
        benchmark::ClobberMemory();
    }
    perSample (state);
}

void BlockStep8States (benchmark::State& state)
{
    runBlocks<8> (state);
}

void EigenStep8States (benchmark::State& state)
{
    runEigen<8> (state);
}

void SampleStep8States (benchmark::State& state)
{
    runSamples<8> (state);
}

void BlockStep4States (benchmark::State& state)
{
    runBlocks<4> (state);
}

void BlockStep24States (benchmark::State& state)
{
    runBlocks<24> (state);
}

void EigenStep24States (benchmark::State& state)
{
    runEigen<24> (state);
}

/// Values to matrices for both the sample step and the block step.
void RebuildCard24Nodes (benchmark::State& state)
{
    Prepared card (largeCard());
    for ([[maybe_unused]] auto _ : state)
    {
        card.values[0] = card.values[0] > 5e3 ? 4e3 : 6e3;
        card.builder.build (card.values, card.network);
        card.step.build (card.network);
        card.block.build (card.step);
        benchmark::ClobberMemory();
    }
}

/// The same without the block step, as it is done while a knob moves.
void RebuildCard24NodesMoving (benchmark::State& state)
{
    Prepared card (largeCard());
    for ([[maybe_unused]] auto _ : state)
    {
        card.values[0] = card.values[0] > 5e3 ? 4e3 : 6e3;
        card.builder.build (card.values, card.network);
        card.step.build (card.network);
        benchmark::ClobberMemory();
    }
}

BENCHMARK (BlockStep8States);
BENCHMARK (EigenStep8States);
BENCHMARK (SampleStep8States);
BENCHMARK (BlockStep4States);
BENCHMARK (BlockStep24States);
BENCHMARK (EigenStep24States);
BENCHMARK (RebuildCard24Nodes);
BENCHMARK (RebuildCard24NodesMoving);

} // namespace

} // namespace stopwright
