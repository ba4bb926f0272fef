// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/InkColours.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

std::uint8_t mixed (std::uint8_t ink, std::uint8_t sheet, double strength) noexcept
{
    return static_cast<std::uint8_t> (std::lround (sheet + strength * (static_cast<double> (ink) - sheet)));
}

} // namespace

InkColour InkColours::of (Ink ink, double strength) const noexcept
{
    const auto& full = colours[static_cast<std::size_t> (ink)];
    const auto& sheet = colours[static_cast<std::size_t> (Ink::sheet)];
    const double part = std::clamp (strength, 0.0, 1.0);
    return { mixed (full.red, sheet.red, part), mixed (full.green, sheet.green, part),
             mixed (full.blue, sheet.blue, part) };
}

const InkColours& InkColours::print() noexcept
{
    static constexpr InkColours inks {
        { InkColour { 0x1b, 0x24, 0x30 }, InkColour { 0x55, 0x60, 0x6b }, InkColour { 0x9a, 0x9f, 0xa5 },
          InkColour { 0xdd, 0xdf, 0xe2 }, InkColour { 0x0a, 0x5a, 0x94 }, InkColour { 0x9b, 0xae, 0xbe },
          InkColour { 0x8a, 0x3f, 0x7c }, InkColour { 0xa8, 0x3a, 0x00 }, InkColour { 0xff, 0xff, 0xff } }
    };
    return inks;
}

std::string hexText (const InkColour& colour)
{
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text = "#";
    for (const auto part : { colour.red, colour.green, colour.blue })
    {
        text += digits[part >> 4U];
        text += digits[part & 0xfU];
    }
    return text;
}

} // namespace stopwright
