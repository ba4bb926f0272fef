// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace stopwright
{

/// The filters of a RailClipper, all cut from one linear-phase low-pass that is flat to 20 kHz and 120 dB down from 0.6
/// of the rate: up to `points` between each two samples, and back.
///
/// The cut at 0.6 and not at the rate less 20 kHz, where aliases would already stay out of hearing, is for the stage after
/// this one: if it clips too, it mixes what was folded above 20 kHz back into hearing.
struct RailKernel
{
    static constexpr int points = 8; ///< per sample

    int reach = 0;                 ///< samples to either side
    std::vector<double> between;   ///< [2 reach][points]: the point (j + 1/2) / points after sample reach - 1
    std::vector<double> back;      ///< [2 reach + 2][points]: weights of means over a point's length, see RailClipper
    std::vector<double> unclipped; ///< [4 reach + 1]: both ways in one
    double largestGain = 1.0;      ///< a point lies within +- this times the largest of its samples
};

/// Units/range: rateHz >= 100 kHz, samples per second. Threading: [control].
RailKernel makeRailKernel (double rateHz);

} // namespace stopwright
