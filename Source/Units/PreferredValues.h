// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

namespace stopwright
{

/// The series of preferred values in which resistors, capacitors and inductors are made.
enum class Series
{
    e6,
    e12,
    e24,
    e48,
    e96
};

/// A member of a series, and how far it is from the value that was wished for.
struct PreferredValue
{
    double value;        ///< the member, in the unit of the wish
    double errorPercent; ///< 100 (value / wish - 1)
    double errorDb;      ///< 20 log10 (value / wish): the level shift of what is proportional to the value
    double errorCents;   ///< 1200 log2 (value / wish): the pitch shift of what is proportional to the value
};

/// The members of one decade, rising, from 1.0 up to below 10.
///
/// Threading: [any]
/// Source: IEC 60063:2015, tables 1 and 2 (E24 has eight members off the rounded geometric series, 2.7 .. 4.7 and 8.2)
std::span<const double> mantissas (Series series) noexcept;

/// The member that is nearest by ratio, which is how an error is heard and how a tolerance is counted.
///
/// errorCents is the shift of a frequency proportional to the value. A corner 1/(2 pi R C) moves by minus that, a
/// resonance 1/(2 pi sqrt (L C)) by minus half of it: that conversion is the caller's. Threading: [control]
/// Fails: Error unless 1e-18 <= value <= 1e18.
PreferredValue nearestPreferred (double value, Series series);

/// The member so many steps up (steps > 0) or down, through as many decades as it takes.
///
/// From a value between two members the first step leads to the adjacent one; 0 steps leads to the nearest. A value
/// within 1e-9 of a member counts as that member. Threading: [control]
/// Fails: Error unless both the value and the result are in 1e-18 .. 1e18.
double nextPreferred (double value, Series series, int steps);

} // namespace stopwright
