// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/DecimalDigits.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstddef>
#include <string_view>

namespace stopwright
{

namespace
{

/// Long enough for 17 digits, sign, point and exponent.
using Buffer = std::array<char, 40>;

/// Takes "-4.7e-09" apart.
DecimalDigits split (std::string_view scientific)
{
    DecimalDigits result;
    result.negative = scientific.front() == '-';
    if (result.negative)
        scientific.remove_prefix (1);

    const auto mark = scientific.find ('e');
    for (const char c : scientific.substr (0, mark))
        if (c != '.')
            result.digits += c;

    auto exponent = scientific.substr (mark + 1);
    if (exponent.front() == '+') // from_chars takes no plus sign
        exponent.remove_prefix (1);
    std::from_chars (exponent.data(), exponent.data() + exponent.size(), result.exponent);
    return result;
}

std::string_view written (const Buffer& buffer, const char* end)
{
    return { buffer.data(), static_cast<std::size_t> (end - buffer.data()) };
}

} // namespace

DecimalDigits DecimalDigits::shortest (double value)
{
    Buffer buffer {};
    const auto result =
        std::to_chars (buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::scientific);
    return split (written (buffer, result.ptr));
}

DecimalDigits DecimalDigits::rounded (double value, int digits)
{
    Buffer buffer {};
    const auto decimals = std::clamp (digits, 1, 17) - 1;
    const auto result =
        std::to_chars (buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::scientific, decimals);
    return split (written (buffer, result.ptr));
}

std::string DecimalDigits::whole (int unitExponent) const
{
    const auto count = exponent - unitExponent + 1;
    if (count <= 0)
        return "0";

    auto text = digits.substr (0, static_cast<std::size_t> (count));
    text.resize (static_cast<std::size_t> (count), '0');
    return text;
}

std::string DecimalDigits::fraction (int unitExponent) const
{
    const auto count = exponent - unitExponent + 1;
    if (count <= 0)
        return std::string (static_cast<std::size_t> (-count), '0') + digits;

    const auto first = static_cast<std::size_t> (count);
    return first < digits.size() ? digits.substr (first) : std::string();
}

} // namespace stopwright
