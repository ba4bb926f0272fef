// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/CardVoice.h"
#include "Sound/ClickMeasure.h"
#include "Sound/TestCards.h"
#include "Support/Tolerances.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>

namespace stopwright
{
namespace
{

using namespace test;

constexpr double rateHz = 48000.0;

struct Turn
{
    std::string part;
    double from;
    double to;
};

/// Residue re the output's peak, in dB, of a turn while the near-sine of A3 = 220 Hz sounds; the worst of several
/// instants of the wave.
double residueDb (const Turn& turn, bool inOneGo)
{
    double worst = -400.0;
    for (int phase = 0; phase < 5; ++phase)
    {
        Card card = nearSineCard();
        const StreamSpec spec { .deviceRateHz = rateHz, .maxFrames = 64 };
        CardVoice voice (card, keySourceForCardAlone (card), spec);
        const int knob = *voice.findKnob ({ turn.part, KnobKind::value });
        voice.setControl (knob, turn.from);
        renderVolts (voice, 48000 + 44 * phase, { { 0, 57, true } });
        auto samples = renderVolts (voice, 4096);
        if (inOneGo)
        {
            // The negative twin: what a jump between two settled networks sounds like.
            CardVoice other (card, keySourceForCardAlone (card), spec);
            other.setControl (knob, turn.to);
            renderVolts (other, 48000 + 44 * phase + 4096, { { 0, 57, true } });
            const auto after = renderVolts (other, 4096);
            samples.insert (samples.end(), after.begin(), after.end());
        }
        else
        {
            voice.setControl (knob, turn.to);
            const auto after = renderVolts (voice, 4096);
            samples.insert (samples.end(), after.begin(), after.end());
        }
        worst = std::max (worst, residueAboveSixKilohertz (samples, rateHz));
    }
    return worst;
}

TEST (Click, ATurnedKnobLeavesNothingAboveSixKilohertz)
{
    for (const Turn& turn : { Turn { "R", 100e3, 1e3 }, Turn { "R", 1e3, 100e3 }, Turn { "C", 10e-9, 4.7e-9 } })
    {
        const double residue = residueDb (turn, false);
        std::printf ("residue above 6 kHz, %s %g -> %g: %.1f dB\n", turn.part.c_str(), turn.from, turn.to, residue);
        EXPECT_LT (residue, tolerance::knobResidueDb) << turn.part;
    }
}

TEST (Click, AJumpWouldBeSeen)
{
    EXPECT_GT (residueDb ({ "R", 100e3, 1e3 }, true), -40.0);
}

} // namespace
} // namespace stopwright
