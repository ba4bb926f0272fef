// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/NamedItem.h"

#include "Circuit/FindingWords.h"
#include "Organ/Spelling.h"
#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <string>

namespace stopwright
{

namespace
{

/// All of them as long as one can read through them.
std::string listed (const std::vector<std::string_view>& names)
{
    constexpr std::size_t mostListed = 16;
    std::vector<std::string> words;
    words.reserve (names.size());
    for (const auto name : names)
        words.emplace_back (name);
    if (words.size() > mostListed)
        return partsWords (words);
    for (auto& word : words)
        word = partWords (word);
    const std::vector<std::string_view> views (words.begin(), words.end());
    return listedWords (views, "and");
}

} // namespace

void refuseUnknownName (std::string_view word,
                        std::string_view where,
                        std::string_view name,
                        const std::vector<std::string_view>& names)
{
    const auto closest = closestWord (name, names);
    throw Error ("There is no " + std::string (word) + " " + quotedText (name) + " " + std::string (where) + "; "
                 + (closest         ? "did you mean " + quotedText (*closest) + "?"
                    : names.empty() ? "it has none."
                                    : "it has " + listed (names) + "."));
}

void requirePolarity (std::string_view owner, int polarity)
{
    if (polarity != 1 && polarity != -1)
        throw Error ("The polarity of " + partWords (owner) + " must be 1 or -1, not " + std::to_string (polarity)
                     + ".");
}

} // namespace stopwright
