// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FindingWords.h"

#include "Circuit/Netlist.h"
#include "Units/QuotedText.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr std::size_t mostListed = 4;

std::string joined (std::vector<std::string> words)
{
    if (words.size() > mostListed)
    {
        const auto rest = std::to_string (words.size() - mostListed + 1) + " more";
        words.resize (mostListed - 1);
        words.push_back (rest);
    }

    std::string text = words.empty() ? std::string() : words.front();
    for (std::size_t index = 1; index < words.size(); ++index)
        text += (index + 1 == words.size() ? " and " : ", ") + words[index];
    return text;
}

bool isPlain (std::string_view name)
{
    const auto isGraphic = [] (char c) { return c > ' ' && c <= '~' && c != '"'; };
    return ! name.empty() && name.size() <= 20 && std::all_of (name.begin(), name.end(), isGraphic);
}

} // namespace

std::string partWords (std::string_view name)
{
    return isPlain (name) ? std::string (name) : quotedText (name);
}

std::string partsWords (const std::vector<std::string>& names)
{
    std::vector<std::string> words;
    words.reserve (names.size());
    for (const auto& name : names)
        words.push_back (partWords (name));
    return joined (std::move (words));
}

std::string nodeWords (std::string_view name)
{
    return name == commonNode ? "circuit common" : "node " + quotedText (name);
}

std::string nodesWords (const std::vector<std::string>& names)
{
    if (names.size() == 1)
        return nodeWords (names.front());
    std::vector<std::string> words;
    words.reserve (names.size());
    for (const auto& name : names)
        words.push_back (quotedText (name));
    return "nodes " + joined (std::move (words));
}

std::string capitalised (std::string words)
{
    if (! words.empty() && words.front() >= 'a' && words.front() <= 'z')
        words.front() = static_cast<char> (words.front() - 'a' + 'A');
    return words;
}

} // namespace stopwright
