// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>
#include <vector>

namespace stopwright
{

enum class WaveKind
{
    square,    ///< high for `duty` of the period
    pulse,     ///< the same with a narrow duty
    staircase, ///< squares at f, 2f, 4f .. summed with `weights`
    rounded,   ///< a square whose rise and fall are exponentials, in the steady state
    triangle,  ///< linear rise for half a period, linear fall
    sawtooth,  ///< a jump up at the start of the period, then a linear fall
    outphased  ///< sawtooth at f less `outphaseWeight` of a sawtooth at 2f
};

enum class TauUnit
{
    periods,
    seconds
};

/// The shape of a keyed wave, free of pitch and level. Every shape has zero mean (the bus is capacitor coupled) and
/// starts its period where the divider's square rises, so all shapes of one chain are phase-locked.
///
/// Unit size, which a tap's volts peak to peak multiplies: peak to peak 1 for square, pulse, triangle, sawtooth and
/// outphased; for a staircase the first square has peak to peak 1; for rounded, the square that is being rounded has.
struct Wave
{
    WaveKind kind = WaveKind::square;
    double duty = 0.5;              ///< square, pulse: 0.001 .. 0.999
    int ranks = 4;                  ///< staircase: 1 .. 8
    std::vector<double> weights {}; ///< staircase: one per rank; empty means 1, 1/2, 1/4 ..
    double riseTau = 0.1;           ///< rounded: time constants, > 0
    double fallTau = 0.1;
    TauUnit tauUnit = TauUnit::periods;
    double outphaseWeight = 0.5; ///< outphased: 0 .. 1

    bool operator== (const Wave&) const = default;

    /// Weight of staircase rank j = 0 .. ranks - 1. Threading: [any].
    double rankWeight (int rank) const noexcept;

    /// Fails: Error that names the number which is out of the range above, and the range. Threading: [control].
    void check() const;
};

std::string_view waveName (WaveKind kind) noexcept;

} // namespace stopwright
