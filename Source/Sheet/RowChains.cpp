// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/RowChains.h"

#include <algorithm>
#include <map>
#include <numeric>

namespace stopwright
{

namespace
{

/// Whether items of two chains would take the same spot in one row.
bool overlap (const RowPlan& plan, const std::vector<std::size_t>& chain, const std::vector<std::size_t>& other)
{
    return std::any_of (chain.begin(), chain.end(),
                        [&] (std::size_t a)
                        {
                            return std::any_of (other.begin(), other.end(),
                                                [&] (std::size_t b) {
                                                    return plan.items[a].from < plan.items[b].to
                                                           && plan.items[b].from < plan.items[a].to;
                                                });
                        });
}

} // namespace

std::vector<std::vector<std::size_t>> chainsOf (const RowPlan& plan)
{
    std::map<int, std::vector<std::size_t>> itemsAtNode;
    for (std::size_t index = 0; index < plan.items.size(); ++index)
        for (const auto& arm : plan.items[index].arms)
            itemsAtNode[arm.node].push_back (index);

    std::vector<std::vector<std::size_t>> chains (plan.items.size());
    std::vector<std::size_t> chainOf (plan.items.size());
    std::iota (chainOf.begin(), chainOf.end(), std::size_t { 0 });
    for (std::size_t index = 0; index < chains.size(); ++index)
        chains[index] = { index };
    for (const auto& [node, items] : itemsAtNode)
    {
        if (items.size() != 2)
            continue;
        const auto to = std::min (chainOf[items[0]], chainOf[items[1]]);
        const auto from = std::max (chainOf[items[0]], chainOf[items[1]]);
        if (to == from || overlap (plan, chains[to], chains[from]))
            continue;
        for (const auto item : chains[from])
            chainOf[item] = to;
        chains[to].insert (chains[to].end(), chains[from].begin(), chains[from].end());
        chains[from].clear();
    }
    std::erase_if (chains, [] (const auto& chain) { return chain.empty(); });
    return chains;
}

} // namespace stopwright
