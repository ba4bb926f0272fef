// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Tone/KeyerSettings.h"

#include <vector>

namespace stopwright
{

/// How the gates of one keyer bank open and shut, worked out once for its sample rate and shared by all its keys.
///
/// linear: a straight line with raised-cosine corners: the speed of the gain rises as (1 - cos) / 2 over the first
/// quarter, stays, and falls likewise over the last. rc: what is left to go falls by exp (-1 / (tau rate)) each frame.
/// Threading: construct on [control]; immutable, read on [any].
class GateShape
{
public:
    static constexpr int chunkFrames = 256; ///< longest run of remaining()

    GateShape (const KeyerSettings& settings, double sampleRateHz);

    KeyerShape kind() const noexcept { return kind_; }

    /// linear: frames a whole way takes, and the fewest any way takes.
    double wayFrames (bool opening) const noexcept { return opening ? attackFrames_ : releaseFrames_; }

    double fewestFrames() const noexcept { return fewestFrames_; }

    /// linear: how far the gain has come, 0 .. 1, at a part of its time, 0 .. 1.
    double travelled (double part) const noexcept;

    /// rc: what is left to go after k + 1 frames, for k = 0 .. chunkFrames - 1, of 1.
    const std::vector<double>& remaining (bool opening) const noexcept { return opening ? attackLeft_ : releaseLeft_; }

private:
    KeyerShape kind_;
    double attackFrames_;
    double releaseFrames_;
    double fewestFrames_;
    std::vector<double> attackLeft_;
    std::vector<double> releaseLeft_;
    std::vector<double> curve_;
};

} // namespace stopwright
