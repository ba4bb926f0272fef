// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/BlockStep.h"

#include "Circuit/SampleNetworks.h"
#include "Circuit/StateSpaceBuilder.h"
#include "Support/Tolerances.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

constexpr int blockCount = 100;

/// Both ways through the same random sources; the difference relative to the peak.
double worstDifference (const Netlist& netlist, const std::vector<std::string>& outputNodes, Random& random)
{
    StateSpaceBuilder builder (netlist, outputNodes);
    auto network = builder.makeStateSpace();
    CayleyStep step (builder.stateCount(), builder.sourceCount(), builder.outputCount(), 192000.0);
    BlockStep blocks (builder.stateCount(), builder.sourceCount(), builder.outputCount());
    if (! builder.build (builder.knobs().values(), network) || ! step.build (network))
        return INFINITY;
    blocks.build (step);

    const int frameCount = blockCount * blocks.blockLength();
    const auto makeBuffers = [&] (int count)
    {
        return std::vector<std::vector<double>> (static_cast<std::size_t> (count),
                                                 std::vector<double> (static_cast<std::size_t> (frameCount)));
    };
    auto in = makeBuffers (builder.sourceCount());
    for (auto& channel : in)
        for (auto& sample : channel)
            sample = random.uniform (-1.0, 1.0);

    std::vector<double> result[2];
    for (const bool inBlocks : { false, true })
    {
        auto out = makeBuffers (builder.outputCount());
        std::vector<const double*> from;
        std::vector<double*> to;
        from.reserve (in.size());
        to.reserve (out.size());
        for (auto& channel : in)
            from.push_back (channel.data());
        for (auto& channel : out)
            to.push_back (channel.data());
        std::vector<double> states (static_cast<std::size_t> (builder.stateCount()), 0.01);
        std::vector<double> last (static_cast<std::size_t> (builder.sourceCount()), 0.5);
        if (inBlocks)
            blocks.run (states.data(), last.data(), from.data(), to.data(), 0, blockCount);
        else
            step.run (states.data(), last.data(), from.data(), to.data(), 0, frameCount);
        for (const auto& channel : out)
            result[inBlocks].insert (result[inBlocks].end(), channel.begin(), channel.end());
        result[inBlocks].insert (result[inBlocks].end(), states.begin(), states.end());
    }

    double peak = 1e-12;
    double worst = 0.0;
    for (std::size_t index = 0; index < result[0].size(); ++index)
    {
        peak = std::max (peak, std::abs (result[0][index]));
        worst = std::max (worst, std::abs (result[0][index] - result[1][index]));
    }
    return worst / peak;
}

} // namespace

TEST (BlockStep, EqualsSampleBySample)
{
    Random random (11);
    for (const auto& sample : sampleNetworks())
        EXPECT_LT (worstDifference (sample.netlist, { sample.netlist.output }, random), tolerance::blockStep)
            << sample.name;
    EXPECT_LT (worstDifference (largeCard(), { "n24" }, random), tolerance::blockStep);
}

TEST (BlockStep, EqualsSampleBySampleWithSeveralOutputs)
{
    Random random (12);
    for (const auto& sample : sampleNetworks())
        EXPECT_LT (worstDifference (sample.netlist, { sample.netlist.output, "a", "0", "b" }, random),
                   tolerance::blockStep)
            << sample.name;
}

} // namespace stopwright
