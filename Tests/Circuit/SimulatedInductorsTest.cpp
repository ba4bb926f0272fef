// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ClosedForm.h"
#include "Circuit/NetlistSketch.h"
#include "Support/Tolerances.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

// One-amplifier simulated inductor: op-amp application notes, and R. Elliott's articles on gyrators. Generalised impedance
// converter: A. Antoniou, "Realisation of gyrators using operational amplifiers", 1969; frequency-dependent negative
// resistance: L. T. Bruton, "Network transfer functions using the concept of frequency-dependent negative resistance",
// 1969 (both from memory).

namespace stopwright
{
namespace
{

using Complex = std::complex<double>;

constexpr double pi = std::numbers::pi;

/// A follower whose capacitor feeds its plus input and whose output drives the small resistor back to the input node.
Netlist follower (double lossOhms, double gyrationOhms, double farads)
{
    return NetlistSketch()
        .tap ("in", "z", 10e3)
        .capacitor ("C1", "z", "p", farads)
        .resistor ("RG", "p", "0", gyrationOhms)
        .opAmp ("U1", "p", "o", "o")
        .resistor ("RL", "z", "o", lossOhms)
        .output ("z");
}

/// What the network shows besides the tap's 10 k.
Complex without10k (Complex seen)
{
    return 1.0 / (1.0 / seen - 1.0 / 10e3);
}

TEST (SimulatedInductors, OneAmplifierImpedance)
{
    const double loss = 470.0;
    const double gyration = 100e3;
    const double farads = 22e-9;
    const auto closedForm = [=] (Complex s)
    {
        const Complex alone = (1.0 + s * gyration * farads) * loss / (1.0 + s * loss * farads);
        return 1.0 / (1.0 / alone + 1.0 / 10e3);
    };
    EXPECT_LT (worstImpedanceError (follower (loss, gyration, farads), "z", closedForm, 1.0, 200e3),
               tolerance::transferFunction);
}

TEST (SimulatedInductors, OneAmplifierWorkedValues)
{
    // 470 ohm, 100 k, 22 n: rounded results of the closed form.
    const SmallSignal analysis (follower (470.0, 100e3, 22e-9));
    const auto alone = [&] (double hz) { return without10k (analysis.impedance ("z", hz)); };
    const auto henries = [&] (double hz) { return alone (hz).imag() / (2.0 * pi * hz); };
    const auto quality = [&] (double hz) { return alone (hz).imag() / alone (hz).real(); };
    EXPECT_NEAR (alone (100.0).real(), 474.2, 0.05);
    EXPECT_NEAR (alone (100.0).imag(), 646.6, 0.05);
    EXPECT_NEAR (alone (1000.0).real(), 888.34, 0.005);
    EXPECT_NEAR (alone (1000.0).imag(), 6439.10, 0.005);
    EXPECT_NEAR (henries (1000.0), 1.0248, 5e-5);
    EXPECT_NEAR (quality (1000.0), 7.25, 0.005);
    EXPECT_NEAR (henries (3000.0), 0.9915, 5e-5);
    EXPECT_NEAR (quality (3000.0), 4.54, 0.005);
    EXPECT_NEAR (henries (10000.0), 0.724, 5e-4);
    EXPECT_NEAR (quality (10000.0), 1.52, 0.006);
}

/// Five arms in a row from node 1 to common, each a resistor or a capacitor; both amplifiers look at nodes 1, 3 and 5.
Netlist converter (const std::array<double, 5>& values, const std::array<bool, 5>& isCapacitor)
{
    const std::array<std::string, 6> nodes { "1", "2", "3", "4", "5", "0" };
    NetlistSketch sketch;
    sketch.tap ("in", "1", 10e3);
    for (std::size_t arm = 0; arm < 5; ++arm)
    {
        const auto name = numbered ("Z", arm + 1);
        if (isCapacitor[arm])
            sketch.capacitor (name, nodes[arm], nodes[arm + 1], values[arm]);
        else
            sketch.resistor (name, nodes[arm], nodes[arm + 1], values[arm]);
    }
    return sketch.opAmp ("U1", "1", "3", "4").opAmp ("U2", "5", "3", "2").output ("1");
}

TEST (SimulatedInductors, ImpedanceConverterAsAnInductor)
{
    const auto closedForm = [] (Complex s)
    {
        const Complex alone = s * 3.3e3 * 4.7e3 * 6.8e3 * 10e-9 / 2.2e3;
        return 1.0 / (1.0 / alone + 1.0 / 10e3);
    };
    EXPECT_LT (
        worstImpedanceError (converter ({ 3.3e3, 2.2e3, 4.7e3, 10e-9, 6.8e3 }, { false, false, false, true, false }),
                             "1", closedForm, 1.0, 200e3),
        tolerance::transferFunction);
}

TEST (SimulatedInductors, ImpedanceConverterAsAFrequencyDependentNegativeResistance)
{
    const auto closedForm = [] (Complex s)
    {
        const Complex alone = 4.7e3 / (s * s * 10e-9 * 10e-9 * 2.2e3 * 3.3e3);
        return 1.0 / (1.0 / alone + 1.0 / 10e3);
    };
    EXPECT_LT (
        worstImpedanceError (converter ({ 10e-9, 2.2e3, 4.7e3, 3.3e3, 10e-9 }, { true, false, false, false, true }),
                             "1", closedForm, 1.0, 20e3),
        tolerance::transferFunction);
}

} // namespace
} // namespace stopwright
