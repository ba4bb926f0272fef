// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Units/Engineering.h"

#include <optional>
#include <span>
#include <string_view>

namespace stopwright
{

// The letters of engineering notation, shared by the reader and the writer.

/// What a quantity is called and how its values are written.
struct QuantityWords
{
    std::string_view name;     ///< "a resistance"
    std::string_view examples; ///< "4k7, R47, 2M2 or 150"
    std::string_view unit;     ///< symbol for the eye, UTF-8
    char pointLetter;          ///< the unit's own letter in place of the point (R, F, H, V, A), or 0
};

const QuantityWords& wordsFor (Quantity quantity) noexcept;

/// A letter that stands for a power of ten.
struct Prefix
{
    std::string_view text;    ///< as read, UTF-8
    std::string_view display; ///< as shown to the eye
    int exponent;
    bool isWritten; ///< the spelling that is written, where there are several
};

/// Every prefix that is read.
/// Source: IEC 60062:2016, 4.2 for R K M G T and p n µ m F; k beside K, u beside µ: common practice
std::span<const Prefix> prefixes() noexcept;

/// A unit as it is written after a value.
struct UnitSpelling
{
    std::string_view text;
    Quantity quantity;
};

/// Every unit that is recognised, longest spellings first.
std::span<const UnitSpelling> unitSpellings() noexcept;

} // namespace stopwright
