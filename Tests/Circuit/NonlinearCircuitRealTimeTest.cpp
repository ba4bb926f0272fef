// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/DeviceNetworks.h"
#include "Support/AllocationGuard.h"

#include <gtest/gtest.h>
#include <limits>

namespace stopwright
{

namespace
{

constexpr int frameCount = 64;

/// Everything the audio thread may call, many times over.
void exercise (NonlinearCircuit& circuit, NonlinearCircuit& other, const std::vector<int>& map, int knob)
{
    double input[frameCount] = {};
    double output[frameCount] = {};
    const double* from[] = { input };
    double* to[] = { output };
    for (int buffer = 0; buffer < 200; ++buffer)
    {
        input[buffer % frameCount] = buffer == 170 ? std::numeric_limits<double>::quiet_NaN() : 5.0;
        if (buffer % 20 == 3)
            circuit.setKnobTarget (knob, buffer % 40 == 3 ? 1e4 : 2e4);
        if (buffer % 50 == 7)
            circuit.setKnobNow (knob, 5e3);
        if (buffer == 90)
            circuit.adoptStates (other, map);
        if (buffer == 150)
            circuit.reset();
        circuit.process (from, to, frameCount - buffer % 9);
        circuit.openFrame ({ input, 1 });
        output[0] += circuit.tryFrame (1e-5).volts;
        circuit.closeFrame (1e-5, { output, 1 });
        output[0] +=
            circuit.restingVolts (0) + circuit.knobValue (knob) + static_cast<double> (circuit.fallbackCount());
    }
}

} // namespace

TEST (NonlinearCircuitRealTime, NeitherAllocatesNorLocks)
{
    if (! AllocationGuard::isAvailable)
        GTEST_SKIP() << "malloc belongs to the sanitizer";
    for (const auto& netlist : { clipper (2.2e3, 10e-9).output ("out"), emitterFollower (1e-6).output ("out"),
                                 commonEmitter (silicon (50.0)).output ("out") })
    {
        DeviceRun run (netlist, 192000.0);
        DeviceRun other (netlist, 192000.0);
        const auto map = run.circuit.adoptionMap (other.circuit);
        const int knob = run.circuit.findKnob ({ "R1", KnobKind::value }).value_or (0);
        const AllocationGuard guard;
        exercise (run.circuit, other.circuit, map, knob);
        const auto allocations = guard.allocations();
        const auto releases = guard.releases();
        const auto locks = guard.locks();
        EXPECT_EQ (allocations, 0U);
        EXPECT_EQ (releases, 0U);
        EXPECT_EQ (locks, 0U);
    }
}

} // namespace stopwright
