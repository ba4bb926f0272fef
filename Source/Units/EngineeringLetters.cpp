// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/EngineeringLetters.h"

#include <array>
#include <cstddef>

namespace stopwright
{

namespace
{

// In the order of enum class Quantity.
constexpr std::array<QuantityWords, 8> quantityWords { {
    { "a resistance", "4k7, R47, 2M2 or 150", "\u03a9", 'R' },
    { "a capacitance", "22n, 4n7, 0.1u or 470p", "F", 'F' },
    { "an inductance", "1H5, 680m, 4m7 or 1H", "H", 'H' },
    { "a frequency", "440, 2.5k or 1M", "Hz", 0 },
    { "a voltage", "12, 3V3 or 500m", "V", 'V' },
    { "a current", "20m, 1A5 or 100u", "A", 'A' },
    { "a time", "0.5, 20m or 100u", "s", 0 },
    { "a number", "0.5, 12 or 1e-3", "", 0 },
} };

constexpr std::array<Prefix, 11> prefixTable { {
    { "p", "p", -12, true },
    { "n", "n", -9, true },
    { "u", "\u00b5", -6, true },
    { "\u00b5", "\u00b5", -6, false }, // micro sign
    { "\u03bc", "\u00b5", -6, false }, // Greek mu
    { "m", "m", -3, true },
    { "k", "k", 3, true },
    { "K", "k", 3, false },
    { "M", "M", 6, true },
    { "G", "G", 9, true },
    { "T", "T", 12, true },
} };

constexpr std::array<UnitSpelling, 14> unitTable { {
    { "ohms", Quantity::resistance },
    { "Ohms", Quantity::resistance },
    { "ohm", Quantity::resistance },
    { "Ohm", Quantity::resistance },
    { "\u03a9", Quantity::resistance }, // Greek capital omega
    { "\u2126", Quantity::resistance }, // ohm sign
    { "R", Quantity::resistance },
    { "Hz", Quantity::frequency },
    { "hz", Quantity::frequency },
    { "F", Quantity::capacitance },
    { "H", Quantity::inductance },
    { "V", Quantity::voltage },
    { "A", Quantity::current },
    { "s", Quantity::time },
} };

} // namespace

const QuantityWords& wordsFor (Quantity quantity) noexcept
{
    return quantityWords[static_cast<std::size_t> (quantity)];
}

std::span<const Prefix> prefixes() noexcept
{
    return prefixTable;
}

std::span<const UnitSpelling> unitSpellings() noexcept
{
    return unitTable;
}

} // namespace stopwright
