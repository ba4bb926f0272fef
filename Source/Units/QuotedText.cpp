// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/QuotedText.h"

#include <algorithm>
#include <cstddef>

namespace stopwright
{

namespace
{

unsigned char byteAt (std::string_view text, std::size_t index)
{
    return static_cast<unsigned char> (text[index]);
}

/// How many bytes the character at the front of a text has, or 0 where it is not well-formed UTF-8.
/// Source: The Unicode Standard 15.0, table 3-7
std::size_t characterLength (std::string_view text)
{
    const auto lead = byteAt (text, 0);
    if (lead < 0x80)
        return 1;

    const std::size_t length = lead >= 0xf0 ? 4 : (lead >= 0xe0 ? 3 : 2);
    if (lead < 0xc2 || lead > 0xf4 || text.size() < length)
        return 0;

    // The second byte keeps out overlong forms, surrogates and what lies beyond U+10FFFF.
    const auto second = byteAt (text, 1);
    if ((lead == 0xe0 && second < 0xa0) || (lead == 0xed && second > 0x9f) || (lead == 0xf0 && second < 0x90)
        || (lead == 0xf4 && second > 0x8f))
        return 0;

    const auto tail = text.substr (1, length - 1);
    const auto continues = [] (char c) { return (static_cast<unsigned char> (c) & 0xc0) == 0x80; };
    return std::all_of (tail.begin(), tail.end(), continues) ? length : 0;
}

bool isControl (std::string_view character)
{
    const auto lead = byteAt (character, 0);
    const auto isC1 = lead == 0xc2 && byteAt (character, 1) < 0xa0;
    return lead < 0x20 || lead == 0x7f || isC1;
}

} // namespace

std::string quotedText (std::string_view text)
{
    constexpr std::size_t longest = 60;
    std::string quoted = "\"";

    while (! text.empty())
    {
        const auto length = characterLength (text);
        const auto character = text.substr (0, std::max<std::size_t> (length, 1));
        if (quoted.size() + character.size() > longest + 1)
            return quoted + "...\"";

        if (length == 0 || isControl (character))
            quoted += '?';
        else
            quoted += character;

        text.remove_prefix (character.size());
    }

    return quoted + '"';
}

} // namespace stopwright
