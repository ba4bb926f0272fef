// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace stopwright
{

/// A number for a CSV file: 12 significant digits at most, a point whatever the locale, "-inf" for an absent level; 0
/// has no sign.
///
/// Threading: [control]
std::string csvNumber (double value);

/// A number for the eye with so many decimals; "-inf" and "inf" as words; what is rounded to zero has no
/// sign. Threading: [control].
std::string fixedNumber (double value, int decimals);

} // namespace stopwright
