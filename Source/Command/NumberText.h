// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace stopwright
{

/// A number for a CSV file: 12 significant digits at most, a point whatever the locale, "-inf" for an absent level,
/// and zero without a sign.
///
/// Threading: [control]
std::string csvNumber (double value);

/// A number for the eye with so many decimals; "-inf" and "inf" as words, and what rounds to nothing without a sign.
/// Threading: [control].
std::string fixedNumber (double value, int decimals);

/// The same of a change: with a plus where it is above nothing, and "-" for one that is no number.
/// Threading: [control].
std::string signedNumber (double value, int decimals);

} // namespace stopwright
