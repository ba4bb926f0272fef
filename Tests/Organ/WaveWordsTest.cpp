// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/WaveWords.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

std::string words (const Wave& wave)
{
    const auto text = waveWords ({ wave, Footage::parse ("2 2/3"), 0.3, 1000.0 });
    const auto rest = ", 2 2/3 ft, " + std::string (levelPrefix (wave.kind)) + "300 mV p-p behind 1.00 k\xCE\xA9";
    return text.ends_with (rest) ? text.substr (0, text.size() - rest.size()) : text;
}

} // namespace

TEST (WaveWords, TellOfWhatTheLevelIs)
{
    const auto footage = Footage::parse ("8");
    EXPECT_EQ (waveWords ({ { .kind = WaveKind::staircase }, footage, 1.0, 0.0 }),
               "staircase of 4 ranks, 8 ft, first 1.00 V p-p behind 0 \xCE\xA9");
    EXPECT_EQ (waveWords ({ { .kind = WaveKind::rounded }, footage, 1.0, 0.0 }),
               "rounded by 0.1 periods, 8 ft, from 1.00 V p-p behind 0 \xCE\xA9");
    EXPECT_EQ (waveWords ({ {}, footage, 1.0, 0.0 }), "square, 8 ft, 1.00 V p-p behind 0 \xCE\xA9");
}

TEST (WaveWords, TellShapesApart)
{
    EXPECT_EQ (words ({}), "square");
    EXPECT_EQ (words ({ .duty = 0.25 }), "square of duty 0.25");
    EXPECT_EQ (words ({ .kind = WaveKind::pulse, .duty = 0.0625 }), "pulse of duty 0.0625");
    EXPECT_EQ (words ({ .kind = WaveKind::staircase, .ranks = 1 }), "staircase of 1 rank");
    EXPECT_EQ (words ({ .kind = WaveKind::staircase, .ranks = 2, .weights = { 1.0, -0.5 } }),
               "staircase of 2 ranks weighted 1:-0.5");
    EXPECT_EQ (words ({ .kind = WaveKind::rounded }), "rounded by 0.1 periods");
    EXPECT_EQ (words ({ .kind = WaveKind::rounded, .riseTau = 1e-5, .fallTau = 2e-5, .tauUnit = TauUnit::seconds }),
               "rounded by 10.0 \xC2\xB5s up and 20.0 \xC2\xB5s down");
    EXPECT_EQ (words ({ .kind = WaveKind::triangle }), "triangle");
    EXPECT_EQ (words ({ .kind = WaveKind::sawtooth }), "sawtooth");
    EXPECT_EQ (words ({ .kind = WaveKind::outphased, .outphaseWeight = 0.46 }), "outphased by 0.46");
}

} // namespace stopwright
