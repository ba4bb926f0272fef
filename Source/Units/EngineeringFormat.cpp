// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/DecimalDigits.h"
#include "Units/Engineering.h"
#include "Units/EngineeringLetters.h"
#include "Units/Error.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr int digitsPerPrefix = 3;

/// The exponents that are written with a prefix: outside, a number gets an exponent instead of many zeros.
struct PrefixRange
{
    int lowest;
    int highest;
};

PrefixRange rangeFor (Quantity quantity)
{
    switch (quantity)
    {
        case Quantity::resistance:
            return { 0, 12 };
        case Quantity::capacitance:
        case Quantity::inductance:
            return { -12, 0 };
        case Quantity::number:
            return { 0, 0 };
        case Quantity::frequency:
        case Quantity::voltage:
        case Quantity::current:
        case Quantity::time:
            break;
    }

    return { -12, 12 };
}

/// The exponent of the prefix for a number whose first digit stands at 10^exponent.
int prefixExponent (int exponent, PrefixRange range)
{
    const auto group =
        exponent >= 0 ? exponent / digitsPerPrefix : -((digitsPerPrefix - 1 - exponent) / digitsPerPrefix);
    return std::min (std::max (group * digitsPerPrefix, range.lowest), range.highest);
}

const Prefix* prefixFor (int exponent)
{
    for (const auto& prefix : prefixes())
        if (prefix.exponent == exponent && prefix.isWritten)
            return &prefix;

    return nullptr;
}

bool isWithin (int exponent, PrefixRange range)
{
    return exponent >= range.lowest - digitsPerPrefix && exponent < range.highest + digitsPerPrefix;
}

std::string shortestPlain (double value)
{
    std::array<char, 40> buffer {};
    const auto result = std::to_chars (buffer.data(), buffer.data() + buffer.size(), value);
    return { buffer.data(), result.ptr };
}

bool isPartValue (Quantity quantity)
{
    return quantity == Quantity::resistance || quantity == Quantity::capacitance || quantity == Quantity::inductance;
}

/// "4k7", "R47", "47k", "150", "1H".
std::string withLetter (const DecimalDigits& number, int exponent, Quantity quantity)
{
    const auto* const prefix = prefixFor (exponent);
    const auto fraction = number.fraction (exponent);
    auto whole = number.whole (exponent);
    if (whole == "0")
        whole.clear();

    const auto isPlainResistance = prefix == nullptr && fraction.empty() && quantity == Quantity::resistance;
    if (isPlainResistance)
        return whole;

    const auto letter =
        prefix == nullptr ? std::string (1, wordsFor (quantity).pointLetter) : std::string (prefix->text);
    return whole + letter + fraction;
}

/// "4.7k", "150".
std::string withPoint (const DecimalDigits& number, int exponent)
{
    const auto fraction = number.fraction (exponent);
    return number.whole (exponent) + (fraction.empty() ? "" : "." + fraction);
}

} // namespace

std::string formatEngineering (double value, Quantity quantity)
{
    if (! std::isfinite (value))
        throw Error ("A value that is not finite cannot be written as " + std::string (wordsFor (quantity).name)
                     + ": check the computation it came from.");

    const auto number = DecimalDigits::shortest (value);
    const auto range = rangeFor (quantity);
    if (value == 0.0 || quantity == Quantity::number || ! isWithin (number.exponent, range))
        return shortestPlain (value);

    const std::string sign = number.negative ? "-" : "";
    const auto exponent = prefixExponent (number.exponent, range);
    if (isPartValue (quantity))
        return sign + withLetter (number, exponent, quantity);

    const auto* const prefix = prefixFor (exponent);
    return sign + withPoint (number, exponent) + (prefix == nullptr ? "" : std::string (prefix->text));
}

std::string formatForReading (double value, Quantity quantity, int significantDigits)
{
    if (! std::isfinite (value))
        return shortestPlain (value);

    const std::string unit (wordsFor (quantity).unit);
    const std::string gap = unit.empty() ? "" : " ";
    if (value == 0.0)
        return "0" + gap + unit;

    // Without prefixes, 0.0001 .. 999999 are still easy to read.
    const auto hasPrefix = quantity != Quantity::number;
    const auto range = hasPrefix ? PrefixRange { -12, 12 } : PrefixRange { -1, 4 };
    const auto number = DecimalDigits::rounded (value, significantDigits);
    const std::string sign = number.negative ? "-" : "";
    if (! isWithin (number.exponent, range))
        return sign + withPoint (number, number.exponent) + "e" + std::to_string (number.exponent) + gap + unit;

    const auto exponent = hasPrefix ? prefixExponent (number.exponent, range) : 0;
    const auto* const prefix = prefixFor (exponent);
    return sign + withPoint (number, exponent) + gap + (prefix == nullptr ? "" : std::string (prefix->display)) + unit;
}

} // namespace stopwright
