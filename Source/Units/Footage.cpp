// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/Footage.h"

#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <array>
#include <bit>
#include <charconv>
#include <numeric>
#include <optional>

namespace stopwright
{

namespace
{

struct Fraction
{
    int numerator;
    int denominator;
};

/// Four digits are plenty for any pipe and keep every product below 2^31.
std::optional<int> takeNumber (std::string_view& text)
{
    constexpr std::size_t mostDigits = 4;
    const auto isDigit = [] (char c) { return c >= '0' && c <= '9'; };
    const auto* const first = text.data();
    const auto* const last = std::find_if_not (first, first + text.size(), isDigit);
    const auto length = static_cast<std::size_t> (last - first);
    if (length == 0 || length > mostDigits)
        return std::nullopt;

    int number = 0;
    std::from_chars (first, last, number);
    text.remove_prefix (length);
    return number;
}

bool take (std::string_view& text, std::string_view start)
{
    if (! text.starts_with (start))
        return false;

    text.remove_prefix (start.size());
    return true;
}

std::string_view withoutBlanksAndUnit (std::string_view text)
{
    constexpr std::array units { std::string_view ("ft"), std::string_view ("'"), std::string_view ("\u2032") };
    const auto trim = [&text]
    {
        while (! text.empty() && text.front() == ' ')
            text.remove_prefix (1);
        while (! text.empty() && text.back() == ' ')
            text.remove_suffix (1);
    };

    trim();
    const auto* const unit = std::ranges::find_if (units, [&text] (auto u) { return text.ends_with (u); });
    if (unit != units.end())
        text.remove_suffix (unit->size());
    trim();
    return text;
}

/// The digits after a decimal point as an exact number of 16ths.
std::optional<Fraction> takeDecimals (int whole, std::string_view& text)
{
    constexpr int parts = 16;
    const auto before = text.size();
    const auto number = takeNumber (text);
    if (! number)
        return std::nullopt;

    int scale = 1;
    for (auto digits = before - text.size(); digits > 0; --digits)
        scale *= 10;

    if (*number * parts % scale != 0)
        return std::nullopt;

    return Fraction { whole * parts + *number * parts / scale, parts };
}

std::optional<Fraction> takeProperFraction (int whole, std::string_view& text)
{
    const auto top = takeNumber (text);
    if (! top || ! take (text, "/"))
        return std::nullopt;

    const auto bottom = takeNumber (text);
    if (! bottom || *top >= *bottom)
        return std::nullopt;

    return Fraction { whole * *bottom + *top, *bottom };
}

std::optional<Fraction> parseFraction (std::string_view text)
{
    const auto whole = takeNumber (text);
    if (! whole)
        return std::nullopt;

    std::optional<Fraction> fraction = Fraction { *whole, 1 };
    if (take (text, "."))
        fraction = takeDecimals (*whole, text);
    else if (take (text, " ") || take (text, "-"))
        fraction = takeProperFraction (*whole, text);
    else if (take (text, "/"))
        fraction = Fraction { *whole, takeNumber (text).value_or (0) };

    return text.empty() && fraction && fraction->denominator > 0 ? fraction : std::nullopt;
}

bool isPowerOfTwo (int number) noexcept
{
    return std::has_single_bit (static_cast<unsigned> (number));
}

} // namespace

Footage::Footage (int numerator, int denominator)
    : numerator_ (numerator / std::gcd (numerator, denominator)),
      denominator_ (denominator / std::gcd (numerator, denominator))
{}

Footage Footage::parse (std::string_view text)
{
    constexpr int longestFeet = 64;
    const auto fraction = parseFraction (withoutBlanksAndUnit (text));
    if (! fraction)
        throw Error (quotedText (text)
                     + " is not a footage: write feet as a whole number or an exact fraction, as 8, "
                       "2 2/3 or 1 3/5.");

    if (fraction->numerator > longestFeet * fraction->denominator || 2 * fraction->numerator < fraction->denominator)
        throw Error ("A footage of " + quotedText (text) + " is out of range: stops run from 64 ft down to 1/2 ft.");

    return { fraction->numerator, fraction->denominator };
}

std::string Footage::text() const
{
    const auto whole = numerator_ / denominator_;
    const auto remainder = numerator_ % denominator_;
    if (remainder == 0)
        return std::to_string (whole);

    const auto fraction = std::to_string (remainder) + "/" + std::to_string (denominator_);
    return whole == 0 ? fraction : std::to_string (whole) + " " + fraction;
}

double Footage::harmonicOfEightFoot() const noexcept
{
    constexpr double unisonFeet = 8.0;
    return unisonFeet * denominator_ / numerator_;
}

bool Footage::isOctave() const noexcept
{
    return isPowerOfTwo (numerator_) && isPowerOfTwo (denominator_);
}

} // namespace stopwright
