// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/NodeNames.h"

namespace stopwright
{

std::string NodeNames::presentName (const std::string& node,
                                    const std::function<bool (const std::string&)>& isThere) const
{
    // Renamings that were undone are followed from the last back, those done again from the first on.
    auto name = node;
    for (auto renaming = renamings_.rbegin(); renaming != renamings_.rend() && ! isThere (name); ++renaming)
        if (name == renaming->second)
            name = renaming->first;
    for (auto renaming = renamings_.begin(); renaming != renamings_.end() && ! isThere (name); ++renaming)
        if (name == renaming->first)
            name = renaming->second;
    return isThere (name) ? name : std::string();
}

} // namespace stopwright
