// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/LineTrain.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <vector>

namespace stopwright
{
namespace
{

/// The frame `units` after the beginning of the train's first line, found by counting off one line after the other.
double atUnits (const LineTrain& train, std::int64_t units)
{
    auto line = static_cast<std::size_t> (train.first);
    while (units > train.lines[line].units)
    {
        units -= train.lines[line].units;
        line = 1 - line;
    }
    return train.lines[line].value + train.lines[line].perUnit * static_cast<double> (units);
}

void expectDrawn (const LineTrain& train, int count)
{
    constexpr float untouched = 12345.0F;
    std::vector<float> frames (static_cast<std::size_t> (count + LineTrain::overrun) + 1, untouched);
    drawLines (frames.data(), count, train);

    for (int frame = 0; frame < count; ++frame)
        ASSERT_NEAR (frames[static_cast<std::size_t> (frame)],
                     atUnits (train, train.since + frame * train.unitsPerSample), 1e-5)
            << "frame " << frame << " of lines of " << train.lines[0].units << " and " << train.lines[1].units
            << " units, since " << train.since << ", " << train.unitsPerSample << " a sample";
    EXPECT_EQ (frames.back(), untouched) << "written beyond the overrun";
}

TEST (LineTrain, LinesOfWholeSamplesEndOnTheirCorner)
{
    // Three samples up, two down; the sample at a corner still belongs to the line before it.
    expectDrawn ({ { { { 30, 0.0, 0.1 }, { 20, 3.0, -0.15 } } }, 0, 10, 10 }, 64);
    expectDrawn ({ { { { 30, 0.5, 0.0 }, { 20, -0.5, 0.0 } } }, 1, 20, 10 }, 64);
}

TEST (LineTrain, OneLineAPeriod)
{
    expectDrawn ({ { { { 77, -0.5, 1.0 / 77.0 }, { 0, 0.0, 0.0 } } }, 0, 5, 10 }, 200);
}

TEST (LineTrain, LinesShorterThanASampleAreSteppedOver)
{
    expectDrawn ({ { { { 3, 1.0, 0.0 }, { 100, -1.0, 0.01 } } }, 1, 40, 16 }, 200);
    expectDrawn ({ { { { 3, 1.0, 0.0 }, { 5, -1.0, 0.0 } } }, 0, 2, 64 }, 200);
}

TEST (LineTrain, AnyLengthsFromAnywhereOn)
{
    std::mt19937 random (7);
    const auto upTo = [&random] (std::int64_t most)
    { return std::uniform_int_distribution<std::int64_t> (1, most) (random); };
    for (int trial = 0; trial < 2000; ++trial)
    {
        LineTrain train;
        train.unitsPerSample = upTo (1000);
        train.lines = { { { upTo (20000), -0.5, 1e-5 }, { upTo (trial % 2 == 0 ? 20000 : 500), 0.5, -2e-5 } } };
        train.first = trial % 3 == 0 ? 1 : 0;
        train.since = upTo (train.lines[static_cast<std::size_t> (train.first)].units);
        expectDrawn (train, static_cast<int> (upTo (100)));
    }
}

TEST (LineTrain, LinesOfAnHourStayExact)
{
    // A 16 Hz generator at 192 kHz in the finest time units there are.
    LineTrain train;
    train.unitsPerSample = (std::int64_t { 1 } << 45) + 12345;
    train.lines = { { { 6000 * train.unitsPerSample - 1, 0.5, 0.0 }, { 6000 * train.unitsPerSample + 1, -0.5, 0.0 } } };
    train.since = 5990 * train.unitsPerSample;
    std::vector<float> frames (32);
    drawLines (frames.data(), 24, train);
    EXPECT_EQ (std::count (frames.begin(), frames.begin() + 24, 0.5F), 10);
}

} // namespace
} // namespace stopwright
