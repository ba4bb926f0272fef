// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/Spelling.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace stopwright
{

namespace
{

constexpr std::size_t longestWord = 40; ///< longer texts are not misspelt words of ours

char lower (char c) noexcept
{
    return c >= 'A' && c <= 'Z' ? static_cast<char> (c - 'A' + 'a') : c;
}

std::size_t editDistance (std::string_view a, std::string_view b) noexcept
{
    using Row = std::array<std::size_t, longestWord + 1>;
    Row beforeLast {};
    Row last {};
    Row current {};
    for (std::size_t j = 0; j <= b.size(); ++j)
        last[j] = j;

    for (std::size_t i = 1; i <= a.size(); ++i)
    {
        current[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j)
        {
            const std::size_t change = lower (a[i - 1]) == lower (b[j - 1]) ? 0 : 1;
            current[j] = std::min ({ last[j] + 1, current[j - 1] + 1, last[j - 1] + change });
            if (i > 1 && j > 1 && lower (a[i - 1]) == lower (b[j - 2]) && lower (a[i - 2]) == lower (b[j - 1]))
                current[j] = std::min (current[j], beforeLast[j - 2] + 1);
        }
        beforeLast = last;
        last = current;
    }
    return last[b.size()];
}

} // namespace

std::optional<std::string_view> closestWord (std::string_view text, std::span<const std::string_view> words)
{
    std::optional<std::string_view> closest;
    if (text.empty() || text.size() > longestWord)
        return closest;

    auto least = longestWord;
    for (const auto word : words)
    {
        const auto distance = editDistance (text, word.substr (0, longestWord));
        if (distance < least && distance <= std::max<std::size_t> (1, word.size() / 3))
        {
            least = distance;
            closest = word;
        }
    }
    return closest;
}

std::string listedWords (std::span<const std::string_view> words, std::string_view before)
{
    const auto last = std::string (" ").append (before) + " ";
    std::string list;
    for (std::size_t i = 0; i < words.size(); ++i)
    {
        if (i > 0)
            list += i + 1 == words.size() ? last : ", ";
        list += words[i];
    }
    return list;
}

} // namespace stopwright
