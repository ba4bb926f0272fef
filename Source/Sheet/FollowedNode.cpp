// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/FollowedNode.h"

#include <algorithm>
#include <map>

namespace stopwright
{

namespace
{

const SheetItem* findSame (const SchematicLayout& layout, const SheetItem& item)
{
    const auto found = std::ranges::find_if (layout.items, [&] (const SheetItem& other)
                                             { return other.kind == item.kind && other.name == item.name; });
    return found == layout.items.end() ? nullptr : &*found;
}

} // namespace

std::string followedNode (const SchematicLayout& from, const SchematicLayout& to, const std::string& node)
{
    std::map<std::string, int> leads; ///< by the node they are on now
    for (const auto& item : from.items)
    {
        const auto* const same = findSame (to, item);
        for (std::size_t lead = 0; same != nullptr && lead < item.terminals.size(); ++lead)
            if (item.terminals[lead].node == node && lead < same->terminals.size()
                && ! same->terminals[lead].node.empty())
                ++leads[same->terminals[lead].node];
    }
    if (leads.empty() || leads.contains (node))
        return to.findNode (node) != nullptr ? node : std::string();
    return std::ranges::max_element (leads, {}, [] (const auto& entry) { return entry.second; })->first;
}

} // namespace stopwright
