// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace stopwright
{

/// A finite number as its decimal digits d0 d1 d2 ..., meaning d0.d1d2... times 10^exponent.
struct DecimalDigits
{
    bool negative = false;
    std::string digits; ///< at least one; the first is not 0 unless the number is 0
    int exponent = 0;

    /// The fewest digits that read back as the same number. Threading: [control], locale-independent
    static DecimalDigits shortest (double value);

    /// The nearest number of that many digits (1 .. 17), trailing zeros kept. Threading: [control], locale-independent
    static DecimalDigits rounded (double value, int digits);

    /// Digits before the point when the number is written in units of 10^unitExponent; "0" where there are none.
    std::string whole (int unitExponent) const;

    /// Digits after the point when the number is written in units of 10^unitExponent; empty where there are none.
    std::string fraction (int unitExponent) const;
};

} // namespace stopwright
