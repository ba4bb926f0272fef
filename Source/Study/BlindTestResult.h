// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace stopwright
{

/// How a blind test ended. Threading: [any], texts [control].
struct BlindTestResult
{
    int right = 0;
    int rounds = 0; ///< answered

    /// The probability of at least as many right by guessing (see guessingChance), 0 .. 1.
    double guessing() const noexcept;

    /// "9 of 10 right; guessing would do as well in 1.1 % of such tests", no full stop; two significant digits.
    std::string words() const;

    /// A line for a card's note, without a line break: "Blind test 2026-11-27: 9 of 10 right; guessing would do as well in
    /// 1.1 % of such tests." `date` is taken as it is; `about`, when given, says what A and B were: " A / B: C1 6n8 / 8n2."
    std::string noteLine (std::string_view date, std::string_view about = {}) const;
};

} // namespace stopwright
