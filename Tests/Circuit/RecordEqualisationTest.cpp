// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ClosedForm.h"
#include "Circuit/NetlistSketch.h"
#include "Support/Tolerances.h"

#include <gtest/gtest.h>

// The replay curve of IEC 60098 with its time constants 3180, 318 and 75 us, made by one passive network: R1 in series,
// then R2 + C1 and C2 to common.

namespace stopwright
{
namespace
{

constexpr double bassSeconds = 3180e-6;
constexpr double middleSeconds = 318e-6;
constexpr double trebleSeconds = 75e-6;

/// H = (1 + s R2 C1) / (1 + s (R2 C1 + R1 C1 + R1 C2) + s^2 R1 R2 C1 C2), solved for the three time constants.
Netlist replayNetwork()
{
    const double c1 = 100e-9;
    const double r2 = middleSeconds / c1;
    const double r1c2 = bassSeconds * trebleSeconds / middleSeconds;
    const double r1 = (bassSeconds + trebleSeconds - middleSeconds - r1c2) / c1;
    return NetlistSketch()
        .tap ("in", "in")
        .resistor ("R1", "in", "out", r1)
        .resistor ("R2", "out", "a", r2)
        .capacitor ("C1", "a", "0", c1)
        .capacitor ("C2", "out", "0", r1c2 / r1)
        .output ("out");
}

TEST (RecordEqualisation, HasTheThreeTimeConstants)
{
    const auto closedForm = [] (std::complex<double> s)
    { return (1.0 + s * middleSeconds) / ((1.0 + s * bassSeconds) * (1.0 + s * trebleSeconds)); };
    EXPECT_LT (worstResponseError (replayNetwork(), closedForm, 1.0, 100e3), tolerance::transferFunction);
}

TEST (RecordEqualisation, FollowsTheTableOfTheStandard)
{
    // dB re 1 kHz, computed from the time constants of IEC 60098 to three decimals.
    const std::vector<std::pair<double, double>> table { { 20.0, 19.274 }, { 50.0, 16.946 },  { 100.0, 13.088 },
                                                         { 200.0, 8.219 }, { 500.0, 2.648 },  { 2e3, -2.589 },
                                                         { 5e3, -8.210 },  { 10e3, -13.734 }, { 20e3, -19.620 } };
    const auto netlist = replayNetwork();
    const SmallSignal analysis (netlist);
    const double atOneKilohertz = responseDb (analysis, netlist, 1000.0);
    for (const auto& [frequencyHz, level] : table)
        EXPECT_NEAR (responseDb (analysis, netlist, frequencyHz) - atOneKilohertz, level, 6e-4) << frequencyHz << " Hz";
}

TEST (RecordEqualisation, PolesAreTheTwoTimeConstants)
{
    const auto poles = SmallSignal (replayNetwork()).poles();
    ASSERT_EQ (poles.size(), 2U);
    EXPECT_LT (relativeError (poles[0], -1.0 / bassSeconds), tolerance::transferFunction);
    EXPECT_LT (relativeError (poles[1], -1.0 / trebleSeconds), tolerance::transferFunction);
}

} // namespace
} // namespace stopwright
