// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/NumberText.h"

#include <array>
#include <charconv>
#include <cmath>
#include <string_view>

namespace stopwright
{

namespace
{

std::string written (double value, std::chars_format format, int precision)
{
    if (std::isinf (value))
        return value < 0.0 ? "-inf" : "inf";

    // Fixed notation of the largest double has 309 digits before the point.
    std::array<char, 400> buffer {};
    const auto result = std::to_chars (buffer.data(), buffer.data() + buffer.size(), value, format, precision);
    const std::string_view text { buffer.data(), static_cast<std::size_t> (result.ptr - buffer.data()) };
    const bool isNothing =
        text.find_first_not_of ("-0.") == std::string_view::npos; // what is rounded to zero has no sign
    return std::string (text.substr (isNothing && text.front() == '-' ? 1 : 0));
}

/// Whether a fixed number is more than noughts.
bool hasValue (std::string_view text)
{
    return text.find_first_of ("123456789") != std::string_view::npos;
}

} // namespace

std::string csvNumber (double value)
{
    constexpr int significantDigits = 12;
    return written (value == 0.0 ? 0.0 : value, std::chars_format::general, significantDigits);
}

std::string fixedNumber (double value, int decimals)
{
    auto text = written (value, std::chars_format::fixed, decimals);
    if (std::isfinite (value) && text.front() == '-' && ! hasValue (text))
        text.erase (0, 1);
    return text;
}

std::string signedNumber (double value, int decimals)
{
    if (std::isnan (value))
        return "-";
    const auto text = fixedNumber (value, decimals);
    return value > 0.0 && hasValue (text) ? "+" + text : text;
}

} // namespace stopwright
