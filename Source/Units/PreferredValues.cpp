// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/PreferredValues.h"

#include "Units/Decibels.h"
#include "Units/Engineering.h"
#include "Units/Error.h"
#include "Units/Pitch.h"

#include <array>
#include <cmath>
#include <cstdint>
#include <string>

namespace stopwright
{

namespace
{

constexpr std::array e6Mantissas { 1.0, 1.5, 2.2, 3.3, 4.7, 6.8 };

constexpr std::array e12Mantissas { 1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2 };

constexpr std::array e24Mantissas { 1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0,
                                    3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1 };

constexpr std::array e48Mantissas { 1.00, 1.05, 1.10, 1.15, 1.21, 1.27, 1.33, 1.40, 1.47, 1.54, 1.62, 1.69,
                                    1.78, 1.87, 1.96, 2.05, 2.15, 2.26, 2.37, 2.49, 2.61, 2.74, 2.87, 3.01,
                                    3.16, 3.32, 3.48, 3.65, 3.83, 4.02, 4.22, 4.42, 4.64, 4.87, 5.11, 5.36,
                                    5.62, 5.90, 6.19, 6.49, 6.81, 7.15, 7.50, 7.87, 8.25, 8.66, 9.09, 9.53 };

constexpr std::array e96Mantissas { 1.00, 1.02, 1.05, 1.07, 1.10, 1.13, 1.15, 1.18, 1.21, 1.24, 1.27, 1.30, 1.33, 1.37,
                                    1.40, 1.43, 1.47, 1.50, 1.54, 1.58, 1.62, 1.65, 1.69, 1.74, 1.78, 1.82, 1.87, 1.91,
                                    1.96, 2.00, 2.05, 2.10, 2.15, 2.21, 2.26, 2.32, 2.37, 2.43, 2.49, 2.55, 2.61, 2.67,
                                    2.74, 2.80, 2.87, 2.94, 3.01, 3.09, 3.16, 3.24, 3.32, 3.40, 3.48, 3.57, 3.65, 3.74,
                                    3.83, 3.92, 4.02, 4.12, 4.22, 4.32, 4.42, 4.53, 4.64, 4.75, 4.87, 4.99, 5.11, 5.23,
                                    5.36, 5.49, 5.62, 5.76, 5.90, 6.04, 6.19, 6.34, 6.49, 6.65, 6.81, 6.98, 7.15, 7.32,
                                    7.50, 7.68, 7.87, 8.06, 8.25, 8.45, 8.66, 8.87, 9.09, 9.31, 9.53, 9.76 };

constexpr double smallestValue = 1e-18;
constexpr double largestValue = 1e18;

/// A value this close to a member, as a ratio, is that member.
constexpr double sameValue = 1e-9;

void requireInRange (double value)
{
    if (! (value >= smallestValue && value <= largestValue))
        throw Error ("There is no preferred value near " + formatForReading (value, Quantity::number)
                     + ": the value has to be from 1e-18 to 1e18.");
}

double powerOfTen (int exponent)
{
    double power = 1.0;
    for (; exponent > 0; --exponent)
        power *= 10.0;
    return power;
}

/// Members are numbered through all decades; number 0 is 1.0.
///
/// Made from whole hundredths with a single rounding (powers of ten up to 22 are exact), so that it equals the decimal
/// literal to the last bit: 4.7e-9, where 4.7 * 1e-9 would be one step off and print as 4.700000000000001e-09.
double member (std::span<const double> series, std::int64_t number)
{
    const auto size = static_cast<std::int64_t> (series.size());
    const auto decade = (number >= 0 ? number : number - size + 1) / size;
    const auto hundredths = std::round (100.0 * series[static_cast<std::size_t> (number - decade * size)]);
    const auto exponent = static_cast<int> (decade) - 2;
    return exponent >= 0 ? hundredths * powerOfTen (exponent) : hundredths / powerOfTen (-exponent);
}

/// Number of the highest member that is not above the value.
std::int64_t numberAtOrBelow (std::span<const double> series, double value)
{
    const auto decadeBelow = static_cast<std::int64_t> (std::floor (std::log10 (value))) - 1;
    auto number = decadeBelow * static_cast<std::int64_t> (series.size());
    while (member (series, number + 1) <= value * (1.0 + sameValue))
        ++number;
    return number;
}

std::int64_t numberNearest (std::span<const double> series, double value)
{
    const auto below = numberAtOrBelow (series, value);
    return value / member (series, below) <= member (series, below + 1) / value ? below : below + 1;
}

} // namespace

std::span<const double> mantissas (Series series) noexcept
{
    switch (series)
    {
        case Series::e6:
            return e6Mantissas;
        case Series::e12:
            return e12Mantissas;
        case Series::e24:
            return e24Mantissas;
        case Series::e48:
            return e48Mantissas;
        case Series::e96:
            return e96Mantissas;
    }

    return {};
}

PreferredValue nearestPreferred (double value, Series series)
{
    requireInRange (value);
    const auto members = mantissas (series);
    const auto nearest = member (members, numberNearest (members, value));
    const auto ratio = nearest / value;
    return { nearest, 100.0 * (ratio - 1.0), toDecibels (ratio), centsBetween (value, nearest) };
}

double nextPreferred (double value, Series series, int steps)
{
    requireInRange (value);
    const auto members = mantissas (series);
    auto number = steps == 0 ? numberNearest (members, value) : numberAtOrBelow (members, value);

    const auto isMember = value <= member (members, number) * (1.0 + sameValue);
    if (steps < 0 && ! isMember)
        ++number;

    // Checked by number: 18 decades either way are in range, and member() is exact for no more than that.
    constexpr std::int64_t decades = 18;
    const auto size = static_cast<std::int64_t> (members.size());
    number += steps;
    if (number < -decades * size || number > decades * size)
        throw Error (std::to_string (steps) + " steps from " + formatForReading (value, Quantity::number)
                     + " lead out of the preferred values: take fewer steps.");

    return member (members, number);
}

} // namespace stopwright
