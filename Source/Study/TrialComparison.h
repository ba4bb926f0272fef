// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/StopMatch.h"
#include "Study/StopOnBus.h"

namespace stopwright
{

/// How loud what is heard is with either of two trials, and what to lower so that both are heard alike. The louder is
/// lowered and never the quieter raised: a match must not be able to hurt ears.
/// Threading: [any].
struct TrialComparison
{
    TonePower a;
    TonePower b;

    /// dB re 1 V rms (behind A for aWeighted), -infinity for silence.
    double levelDbOfA (LevelMeasure measure) const noexcept;
    double levelDbOfB (LevelMeasure measure) const noexcept;

    /// B re A in dB; 0 when either is silent, for there is nothing to match then.
    double differenceDb (LevelMeasure measure) const noexcept;

    /// Gain to apply to each, dB <= 0, of one of them exactly 0.
    double gainDbOfA (LevelMeasure measure) const noexcept;
    double gainDbOfB (LevelMeasure measure) const noexcept;
};

} // namespace stopwright
