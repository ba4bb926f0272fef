// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/Drawing.h"

#include <array>
#include <cstdint>
#include <string>

namespace stopwright
{

/// sRGB, 8 bits each.
struct InkColour
{
    std::uint8_t red = 0;
    std::uint8_t green = 0;
    std::uint8_t blue = 0;

    bool operator== (const InkColour&) const = default;
};

/// What each ink of a drawing looks like in a medium; in the order of Ink.
struct InkColours
{
    static constexpr std::size_t count = 9;

    std::array<InkColour, count> colours {};

    /// Range: strength 0 .. 1, how much of the ink there is; the rest is the sheet's colour. Threading: [any].
    InkColour of (Ink ink, double strength = 1.0) const noexcept;

    /// Ink on white paper. Result, source, target and notice differ in lightness too, so that a grey print keeps them
    /// apart. Source: Okabe and Ito, "Color Universal Design", 2008, for blue, vermilion and reddish purple, darkened.
    static const InkColours& print() noexcept;
};

/// "#0a5a94". Threading: [control].
std::string hexText (const InkColour& colour);

} // namespace stopwright
