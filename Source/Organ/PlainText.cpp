// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/PlainText.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace stopwright
{

namespace
{

bool within (unsigned char byte, int low, int high) noexcept
{
    return byte >= low && byte <= high;
}

/// Length of the well-formed character that begins `text`, or 0.
std::size_t characterLength (std::string_view text) noexcept
{
    const auto at = [text] (std::size_t i) { return static_cast<unsigned char> (i < text.size() ? text[i] : '\0'); };
    const auto lead = at (0);

    if (lead < 0x80)
        return text.empty() ? 0 : 1;
    if (within (lead, 0xC2, 0xDF))
        return within (at (1), 0x80, 0xBF) ? 2 : 0;
    if (within (lead, 0xE0, 0xEF))
    {
        const bool second = within (at (1), lead == 0xE0 ? 0xA0 : 0x80, lead == 0xED ? 0x9F : 0xBF);
        return second && within (at (2), 0x80, 0xBF) ? 3 : 0;
    }
    if (within (lead, 0xF0, 0xF4))
    {
        const bool second = within (at (1), lead == 0xF0 ? 0x90 : 0x80, lead == 0xF4 ? 0x8F : 0xBF);
        return second && within (at (2), 0x80, 0xBF) && within (at (3), 0x80, 0xBF) ? 4 : 0;
    }
    return 0;
}

/// Controls of the C1 set (U+0080 .. U+009F) steer terminals as well.
bool steersTerminal (std::string_view character) noexcept
{
    const auto lead = static_cast<unsigned char> (character[0]);
    return lead < 0x20 || lead == 0x7F || (lead == 0xC2 && static_cast<unsigned char> (character[1]) < 0xA0);
}

} // namespace

std::size_t firstByteNotUtf8 (std::string_view text) noexcept
{
    for (std::size_t i = 0; i < text.size();)
    {
        const auto length = characterLength (text.substr (i));
        if (length == 0)
            return i;
        i += length;
    }
    return std::string_view::npos;
}

std::size_t characterCount (std::string_view text) noexcept
{
    return static_cast<std::size_t> (std::count_if (
        text.begin(), text.end(), [] (char c) { return (static_cast<unsigned char> (c) & 0xC0) != 0x80; }));
}

bool hasControlCharacter (std::string_view text) noexcept
{
    return std::any_of (text.begin(), text.end(),
                        [] (char c) { return static_cast<unsigned char> (c) < 0x20 || c == 0x7F; });
}

std::string printable (std::string_view text, std::size_t longest)
{
    std::string safe;
    std::size_t characters = 0;
    for (std::size_t i = 0; i < text.size(); ++characters)
    {
        if (characters == longest)
            return safe + "...";
        const auto length = characterLength (text.substr (i));
        const auto character = text.substr (i, std::max<std::size_t> (length, 1));
        safe += length == 0 || steersTerminal (character) ? "?" : character;
        i += character.size();
    }
    return safe;
}

std::string numberText (double value)
{
    std::array<char, 40> buffer {};
    const auto [end, fault] = std::to_chars (buffer.data(), buffer.data() + buffer.size(), value);
    return fault == std::errc() ? std::string (buffer.data(), end) : std::string ("?");
}

} // namespace stopwright
