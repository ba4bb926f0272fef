// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/CircuitRun.h"
#include "Circuit/SampleNetworks.h"
#include "Support/AllocationGuard.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

constexpr int frameCount = 64;

/// Everything the audio thread may call, many times over.
void exercise (CircuitRun& run, CircuitRun& other, const std::vector<int>& map, int knob)
{
    double input[frameCount] = {};
    double output[frameCount] = {};
    const double* from[] = { input };
    double* to[] = { output };
    for (int buffer = 0; buffer < 200; ++buffer)
    {
        input[buffer % frameCount] = 1.0;
        if (buffer % 20 == 3)
            run.circuit.setKnobTarget (knob, buffer % 40 == 3 ? 1e4 : 2e4);
        if (buffer % 50 == 7)
            run.circuit.setKnobNow (knob, 5e3);
        if (buffer == 90)
            run.circuit.adoptStates (other.circuit, map);
        if (buffer == 150)
            run.circuit.reset();
        run.circuit.process (from, to, frameCount - buffer % 9);
        output[0] += run.circuit.storedEnergy() + run.circuit.knobValue (knob);
    }
}

} // namespace

TEST (LinearCircuitRealTime, NeitherAllocatesNorLocks)
{
    if (! AllocationGuard::isAvailable)
        GTEST_SKIP() << "malloc belongs to the sanitizer";
    auto networks = sampleNetworks();
    networks.push_back ({ "large", largeCard() });
    for (const auto& sample : networks)
    {
        const auto knobPart = sample.name == "turned" ? "P1" : "R1";
        if (sample.netlist.sources.size() != 1)
            continue;
        CircuitRun run (sample.netlist, 192000.0);
        CircuitRun other (sample.netlist, 192000.0);
        const auto map = run.circuit.adoptionMap (other.circuit);
        const int knob = run.knob (knobPart);
        const AllocationGuard guard;
        exercise (run, other, map, knob);
        const auto allocations = guard.allocations();
        const auto releases = guard.releases();
        const auto locks = guard.locks();
        EXPECT_EQ (allocations, 0U) << sample.name;
        EXPECT_EQ (releases, 0U) << sample.name;
        EXPECT_EQ (locks, 0U) << sample.name;
    }
}

} // namespace stopwright
