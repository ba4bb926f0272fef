// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/Wave.h"

#include "Tone/WaveCorners.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace stopwright
{

namespace
{

double highest (const WaveCorners& lines)
{
    double value = -1.0e9;
    for (int c = 0; c < lines.count; ++c)
    {
        const auto& corner = lines.corners[static_cast<std::size_t> (c)];
        const double end = c + 1 < lines.count ? lines.corners[static_cast<std::size_t> (c) + 1].phase : 1.0;
        value = std::max ({ value, corner.value, corner.value + corner.slope * (end - corner.phase) });
    }
    return value;
}

double lowest (WaveCorners lines)
{
    for (auto& corner : lines.corners)
    {
        corner.value = -corner.value;
        corner.slope = -corner.slope;
    }
    return -highest (lines);
}

double meanOf (const WaveCorners& lines)
{
    double mean = 0.0;
    for (int c = 0; c < lines.count; ++c)
    {
        const auto& corner = lines.corners[static_cast<std::size_t> (c)];
        const double end = c + 1 < lines.count ? lines.corners[static_cast<std::size_t> (c) + 1].phase : 1.0;
        const double length = end - corner.phase;
        mean += length * (corner.value + 0.5 * corner.slope * length);
    }
    return mean;
}

} // namespace

TEST (Wave, EveryShapeOfLinesHasUnitSizeAndNoMean)
{
    for (const Wave& wave : { Wave {}, Wave { .duty = 0.3 }, Wave { .kind = WaveKind::pulse, .duty = 0.05 },
                              Wave { .kind = WaveKind::triangle }, Wave { .kind = WaveKind::sawtooth },
                              Wave { .kind = WaveKind::outphased, .outphaseWeight = 0.0 },
                              Wave { .kind = WaveKind::outphased, .outphaseWeight = 0.475 },
                              Wave { .kind = WaveKind::outphased, .outphaseWeight = 0.9 } })
    {
        const WaveCorners lines = WaveCorners::of (wave);
        EXPECT_NEAR (highest (lines) - lowest (lines), 1.0, 1e-12)
            << waveName (wave.kind) << ' ' << wave.outphaseWeight;
        EXPECT_NEAR (meanOf (lines), 0.0, 1e-12) << waveName (wave.kind);
    }
}

TEST (Wave, CornersCloseThePeriod)
{
    for (const Wave& wave :
         { Wave { .duty = 0.3 }, Wave { .kind = WaveKind::triangle }, Wave { .kind = WaveKind::sawtooth },
           Wave { .kind = WaveKind::outphased, .outphaseWeight = 0.3 } })
    {
        const WaveCorners lines = WaveCorners::of (wave);
        for (int c = 0; c < lines.count; ++c)
        {
            const auto& corner = lines.corners[static_cast<std::size_t> (c)];
            const auto& before = lines.corners[static_cast<std::size_t> (c == 0 ? lines.count - 1 : c - 1)];
            const double length = (c == 0 ? 1.0 : corner.phase) - before.phase;
            EXPECT_NEAR (before.value + before.slope * length + corner.jump, corner.value, 1e-12)
                << waveName (wave.kind);
            EXPECT_NEAR (corner.slope - (lines.count == 1 ? corner.slope : before.slope), corner.slopeChange, 1e-12);
        }
    }
}

TEST (Wave, RankWeightsHalveUnlessGiven)
{
    Wave wave { .kind = WaveKind::staircase, .ranks = 3 };
    EXPECT_EQ (wave.rankWeight (0), 1.0);
    EXPECT_EQ (wave.rankWeight (2), 0.25);
    EXPECT_EQ (wave.rankWeight (3), 0.0);
    EXPECT_EQ (wave.rankWeight (-1), 0.0);

    wave.weights = { 1.0, 1.0, -0.5 };
    EXPECT_EQ (wave.rankWeight (2), -0.5);
}

TEST (Wave, RefusesNumbersOutOfRange)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (const Wave& wave :
         { Wave { .duty = 0.0 }, Wave { .duty = nan }, Wave { .kind = WaveKind::pulse, .duty = 1.0 },
           Wave { .kind = WaveKind::staircase, .ranks = 9 }, Wave { .kind = WaveKind::staircase, .ranks = 0 },
           Wave { .kind = WaveKind::staircase, .ranks = 2, .weights = { 1.0 } },
           Wave { .kind = WaveKind::staircase, .ranks = 1, .weights = { nan } },
           Wave { .kind = WaveKind::rounded, .riseTau = 0.0 }, Wave { .kind = WaveKind::rounded, .fallTau = -1.0 },
           Wave { .kind = WaveKind::outphased, .outphaseWeight = 1.1 } })
        EXPECT_THROW (wave.check(), Error) << waveName (wave.kind);

    EXPECT_NO_THROW (Wave {}.check());
    EXPECT_NO_THROW ((Wave { .kind = WaveKind::staircase, .ranks = 8 }.check()));
}

} // namespace stopwright
