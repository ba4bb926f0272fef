// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/NameList.h"

#include <algorithm>

namespace stopwright
{

std::vector<std::string> namesIn (std::string_view text)
{
    constexpr std::string_view spaces = " \t";
    std::vector<std::string> names;
    for (std::size_t start = 0; start <= text.size();)
    {
        const auto end = std::min (text.find (',', start), text.size());
        const auto name = text.substr (start, end - start);
        const auto first = name.find_first_not_of (spaces);
        if (first != std::string_view::npos)
            names.emplace_back (name.substr (first, name.find_last_not_of (spaces) + 1 - first));
        start = end + 1;
    }
    return names;
}

} // namespace stopwright
