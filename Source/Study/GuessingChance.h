// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// The probability that at least `right` of `rounds` fair guesses between two are right, the tail of the binomial
/// distribution: sum of C(rounds, i) / 2^rounds over i = right .. rounds.
///
/// Good to 1e-12 relative at 1000 rounds; below the smallest double it is 0. Units/range: 0 .. 1; 1 when right <= 0, 0 when
/// right > rounds. Threading: [any]. Source: closed form.
double guessingChance (int right, int rounds) noexcept;

} // namespace stopwright
