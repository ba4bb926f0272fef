// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// Frequency weighting A as a ratio of amplitudes, 1 at 1 kHz: how loud the ear finds a soft tone of that pitch, roughly.
/// Units/range: hertz, finite; 0 at 0 Hz. Threading: [any].
/// Source: IEC 61672-1:2013, annex E, the analytical expression.
double aWeighting (double frequencyHz) noexcept;

} // namespace stopwright
