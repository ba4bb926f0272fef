// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/StateAdoption.h"

#include <algorithm>

namespace stopwright
{

namespace
{

/// Index of the first element whose name is `name`, or -1.
int indexByName (const auto& list, const std::string& name)
{
    const auto found = std::find_if (list.begin(), list.end(), [&] (const auto& item) { return item.name == name; });
    return found == list.end() ? -1 : static_cast<int> (found - list.begin());
}

} // namespace

std::vector<std::string> stateNamesOf (const StateSpaceBuilder& network)
{
    std::vector<std::string> names;
    const auto count = static_cast<std::size_t> (network.stateCount());
    names.reserve (count);
    for (std::size_t state = 0; state < count; ++state)
        names.push_back (network.quantities()[state].name);
    return names;
}

std::vector<int> adoptionMapOf (const StateSpaceBuilder& mine,
                                const std::vector<SourcePort>& mySources,
                                const StateSpaceBuilder& theirs,
                                const std::vector<SourcePort>& theirSources)
{
    std::vector<int> map;
    for (const auto& name : stateNamesOf (mine))
        map.push_back (indexByName (theirs.quantities(), name));
    for (const auto& source : mySources)
        map.push_back (indexByName (theirSources, source.name));
    return map;
}

void adoptStatesOf (const SteppedNetwork& theirs, std::span<const int> adoptionMap, SteppedNetwork& mine) noexcept
{
    const auto states = mine.states();
    for (std::size_t index = 0; index < adoptionMap.size(); ++index)
    {
        if (adoptionMap[index] < 0)
            continue;
        const auto from = static_cast<std::size_t> (adoptionMap[index]);
        if (index < states.size())
            states[index] = theirs.quantity (from);
        else
            mine.lastSources()[index - states.size()] = theirs.lastSources()[from];
    }
}

} // namespace stopwright
