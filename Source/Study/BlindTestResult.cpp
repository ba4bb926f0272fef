// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/BlindTestResult.h"

#include "Study/GuessingChance.h"

#include <array>
#include <charconv>
#include <cstddef>

namespace stopwright
{

namespace
{

/// Two significant digits, four decimals at most.
int decimalsOf (double percent) noexcept
{
    constexpr std::array from { 9.95, 0.995, 0.0995, 0.00995 };
    std::size_t decimals = 0;
    while (decimals < from.size() && percent < from[decimals])
        ++decimals;
    return static_cast<int> (decimals);
}

/// "1.1 %", and where rounding would make it none or all of them, what it is less or more than.
std::string shareText (double chance)
{
    constexpr double least = 1e-6;
    constexpr double most = 0.995;
    if (chance < least)
        return "less than 0.0001 %";
    if (chance >= most && chance < 1.0)
        return "more than 99 %";
    constexpr double percentOfOne = 100.0;
    const double percent = percentOfOne * chance;
    std::array<char, 32> text {};
    const auto end =
        std::to_chars (text.data(), text.data() + text.size(), percent, std::chars_format::fixed, decimalsOf (percent));
    return std::string (text.data(), end.ptr) + " %";
}

} // namespace

double BlindTestResult::guessing() const noexcept
{
    return guessingChance (right, rounds);
}

std::string BlindTestResult::words() const
{
    if (rounds == 0)
        return "No round was answered";
    return std::to_string (right) + " of " + std::to_string (rounds) + " right; guessing would do as well in "
           + shareText (guessing()) + " of such tests";
}

std::string BlindTestResult::noteLine (std::string_view date, std::string_view about) const
{
    std::string line = "Blind test ";
    line.append (date).append (": ").append (words()).append (".");
    if (! about.empty())
        line.append (" A / B: ").append (about).append (".");
    return line;
}

} // namespace stopwright
