// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/ShortNames.h"

#include <set>
#include <string_view>

namespace stopwright
{

namespace
{

constexpr std::size_t keptLetters = mostShownLetters - 1; ///< beside the ellipsis

/// Where each letter begins, and where the last one ends.
std::vector<std::size_t> lettersOf (std::string_view name)
{
    std::vector<std::size_t> starts;
    starts.reserve (name.size() + 1);
    for (std::size_t byte = 0; byte < name.size(); ++byte)
        if ((static_cast<unsigned char> (name[byte]) & 0xc0U) != 0x80U)
            starts.push_back (byte);
    starts.push_back (name.size());
    return starts;
}

std::string shortened (const std::string& name, const std::vector<std::size_t>& letters, std::size_t atEnd)
{
    const auto count = letters.size() - 1;
    return name.substr (0, letters[keptLetters - atEnd]) + "\u2026" + name.substr (letters[count - atEnd]);
}

} // namespace

std::vector<std::string> shortNames (const std::vector<std::string>& names)
{
    std::set<std::string> taken;
    for (const auto& name : names)
        if (lettersOf (name).size() <= mostShownLetters + 1)
            taken.insert (name);
    std::vector<std::string> shown;
    shown.reserve (names.size());
    for (const auto& name : names)
    {
        const auto letters = lettersOf (name);
        if (letters.size() <= mostShownLetters + 1)
        {
            shown.push_back (name);
            continue;
        }
        auto found = shortened (name, letters, keptLetters / 2);
        for (std::size_t atEnd = 0; atEnd <= keptLetters && taken.contains (found); ++atEnd)
            found = shortened (name, letters, atEnd);
        if (taken.contains (found))
            found = shortened (name, letters, keptLetters / 2);
        taken.insert (found);
        shown.push_back (std::move (found));
    }
    return shown;
}

} // namespace stopwright
