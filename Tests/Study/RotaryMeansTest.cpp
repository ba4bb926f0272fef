// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/RotaryMeans.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <numbers>

namespace stopwright
{
namespace
{

RotaryMeans pointRotors()
{
    RotarySettings settings;
    settings.horn.radiusMetres = 1e-6;
    settings.drum.radiusMetres = 1e-6;
    return RotaryMeans (settings);
}

// Closed form for a mouth that turns on the spot: the mean of (1 - k (1 - cos a) / 2)^2 is (1 - k / 2)^2 + k^2 / 8, so
// 0.66 for the drum (k = 0.4) and 0.4609 for the horn (k = 0.75).
TEST (RotaryMeans, IsEachRotorsMeanFarFromTheCrossing)
{
    EXPECT_NEAR (pointRotors().power (20.0), 0.66, 1e-3);
    EXPECT_NEAR (pointRotors().power (20000.0), 0.46094, 1e-3);
}

// At the crossing both halves are of amplitude 1/2 and in phase, and on the spot both ways are as long: the mean of
// (d + h)^2 / 4 with means 0.8 and 0.625, that is (0.66 + 0.46094 + 2 0.8 0.625) / 4.
TEST (RotaryMeans, AddsBothHalvesAtTheCrossing)
{
    EXPECT_NEAR (pointRotors().power (800.0), 0.53023, 1e-4);
}

// What is in step: on the spot the means themselves, 0.8 and 0.625; through the crossing the halves add to an all-pass.
TEST (RotaryMeans, KeepsInStepWhatDoesNotSwing)
{
    EXPECT_NEAR (std::abs (pointRotors().gain (20.0)), 0.8, 1e-3);
    EXPECT_NEAR (std::abs (pointRotors().gain (20000.0)), 0.625, 1e-3);
    EXPECT_NEAR (std::abs (pointRotors().gain (800.0)), 0.7125, 1e-4);
}

// A rotor of 15 cm a metre away without beaming swings the phase by w r / c: the mean of e^(j z cos a) is the Bessel
// function J0 (z), 0 at z = 2.405 (Abramowitz and Stegun, table 9.5), and here a little off since the amplitude swings too.
TEST (RotaryMeans, LosesWhatSwingsTooFar)
{
    RotarySettings settings;
    settings.crossoverHz = 20.0;
    const double zeroHz = 2.405 * RotorSight::soundMetresPerSecond / (2.0 * std::numbers::pi * 0.15);
    const RotaryMeans means (settings);
    EXPECT_LT (std::abs (means.gain (zeroHz)), 0.35);
    EXPECT_GT (std::abs (means.gain (0.1 * zeroHz)), 0.6);
    EXPECT_EQ (std::abs (means.gain (15000.0)), 0.0);
    EXPECT_GT (means.power (15000.0), 0.4);
}

} // namespace
} // namespace stopwright
