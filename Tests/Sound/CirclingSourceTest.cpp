// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/CirclingSource.h"

#include "Sound/TestTones.h"
#include "Support/Spectrum.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <complex>
#include <iostream>
#include <limits>
#include <numbers>

namespace stopwright
{
namespace
{

using namespace test;

constexpr double rateHz = 48000.0;
constexpr double turn = 2.0 * std::numbers::pi;
constexpr double metresPerSecond = 343.0;
const RotorSettings horn { .slowRpm = 48.0, .fastRpm = 400.0, .radiusMetres = 0.15 };
const RotorPlace farAway { .microphoneMetres = 1000.0, .directivity = 0.0 };
const RotorPlace near { .microphoneMetres = 1.0, .directivity = 0.75 };

CirclingSource sourceOf (const RotorSettings& rotor, const RotorPlace& place, bool isFast)
{
    auto kernel = std::make_shared<const FractionalKernel> (rateHz);
    const int latency = CirclingSource::leastLatencyFrames (rotor, *kernel, rateHz);
    return { rotor, place, isFast, std::move (kernel), latency, rateHz };
}

struct Range
{
    double least = 1e9;
    double most = -1e9;

    void take (double value)
    {
        least = std::min (least, value);
        most = std::max (most, value);
    }
};

/// What a source would sound like by its delay alone: each frame is heard 1 - d delay / dt times as fast.
Range centsByLaw (bool isFast, int frames)
{
    auto source = sourceOf (horn, farAway, isFast);
    Range cents;
    double last = source.delayFrames();
    for (int frame = 0; frame < frames; ++frame)
    {
        std::vector<double> sample { 0.0 };
        source.process (sample);
        if (frame > 0)
            cents.take (1200.0 * std::log2 (1.0 - (source.delayFrames() - last)));
        last = source.delayFrames();
    }
    return cents;
}

// 400 turns a minute at 0.15 m: tip 6.283 m/s, +32.006 and -31.425 cents; 48 turns: +-3.81 and 3.80 (closed form
// 1200 log2 (1 / (1 -+ v / c)), c = 343 m/s; which gives +32.0/-31.4).
TEST (CirclingSource, BendsPitchByTheLawOfMovingSources)
{
    const Range fast = centsByLaw (true, 7300);
    EXPECT_NEAR (fast.most, 32.006, 0.05);
    EXPECT_NEAR (fast.least, -31.425, 0.05);
    const Range slow = centsByLaw (false, 60100);
    EXPECT_NEAR (slow.most, 3.810, 0.05);
    EXPECT_NEAR (slow.least, -3.801, 0.05);
}

// The same from the sound: phase of a 3 kHz sine from one 11 ms window to the next, 0.5 ms on.
TEST (CirclingSource, SoundsAsItsLawSays)
{
    constexpr std::size_t window = 512;
    constexpr std::size_t hop = 24;
    constexpr double frequencyHz = 3000.0;
    auto source = sourceOf (horn, farAway, true);
    const auto heard = throughWhole (source, sine (20000, 1, 16));
    Range cents;
    std::complex<double> last = 0.0;
    for (std::size_t start = 2000; start + window < heard.size(); start += hop)
    {
        const auto phasor = windowedPartial (std::span (heard).subspan (start, window), frequencyHz, rateHz);
        const double advance = std::arg (phasor / last * std::polar (1.0, -turn * frequencyHz / rateHz * hop));
        if (start > 2000)
            cents.take (1200.0 * std::log2 (1.0 + advance / (turn * frequencyHz / rateHz * hop)));
        last = phasor;
    }
    std::cout << "heard " << cents.most << " and " << cents.least << " cents\n";
    EXPECT_NEAR (cents.most, 32.006, 0.3);
    EXPECT_NEAR (cents.least, -31.425, 0.3);
}

/// The way of a sound that arrives at `seconds`, by halving: c tau = D (angle (seconds - tau)).
double waySeconds (double seconds, double turnsPerSecond, double radius, double distance)
{
    double low = 0.0;
    double high = (distance + radius) / metresPerSecond;
    for (int i = 0; i < 60; ++i)
    {
        const double middle = 0.5 * (low + high);
        const double angle = turn * turnsPerSecond * (seconds - middle);
        const double way =
            std::sqrt (distance * distance + radius * radius - 2.0 * distance * radius * std::cos (angle));
        (metresPerSecond * middle < way ? low : high) = middle;
    }
    return low;
}

TEST (CirclingSource, HearsEachSoundFromWhereItLeft)
{
    auto source = sourceOf (horn, near, true);
    const int latency = CirclingSource::leastLatencyFrames (horn, FractionalKernel (rateHz), rateHz);
    for (int frame = 1; frame < 9000; ++frame)
    {
        std::vector<double> sample { 0.0 };
        source.process (sample);
        const double way = waySeconds (frame / rateHz, 400.0 / 60.0, 0.15, 1.0) - 1.0 / metresPerSecond;
        ASSERT_NEAR (source.delayFrames(), latency + way * rateHz, 1e-6) << frame;
    }
}

// Mouth towards the microphone 1 / (1 - r / d), away from it (1 - directivity) / (1 + r / d): closed form.
TEST (CirclingSource, IsLoudestInFrontAndFaintestBehind)
{
    auto source = sourceOf (horn, near, true);
    throughWhole (source, std::vector<double> (2000, 1.0));
    const auto heard = throughWhole (source, std::vector<double> (7200, 1.0));
    const auto [least, most] = std::minmax_element (heard.begin(), heard.end());
    EXPECT_NEAR (*most, 1.0 / 0.85, 1e-5);
    EXPECT_NEAR (*least, 0.25 / 1.15, 1e-5);
}

TEST (CirclingSource, OnItsAxisOnlyDelays)
{
    RotorSettings rotor = horn;
    rotor.radiusMetres = 0.0;
    auto source = sourceOf (rotor, farAway, true);
    const auto latency = static_cast<std::size_t> (source.delayFrames());
    Random random (71);
    const auto in = noise (500, 1.0, random);
    const auto out = throughWhole (source, in);
    for (std::size_t i = latency; i < out.size(); ++i)
        ASSERT_NEAR (out[i], in[i - latency], 1e-9) << i;
}

TEST (CirclingSource, RefusesWhatCannotTurn)
{
    RotorSettings wide = horn;
    wide.radiusMetres = 1.0;
    EXPECT_THROW (sourceOf (wide, near, true), Error);
    RotorSettings racing = horn;
    racing.fastRpm = 12000.0;
    EXPECT_THROW (sourceOf (racing, near, true), Error);
    RotorSettings broken = horn;
    broken.fastRpm = std::numeric_limits<double>::quiet_NaN();
    EXPECT_THROW (sourceOf (broken, near, true), Error);
}

} // namespace
} // namespace stopwright
