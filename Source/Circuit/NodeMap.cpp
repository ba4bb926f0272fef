// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NodeMap.h"

#include <algorithm>

namespace stopwright
{

namespace
{

/// Names in order of appearance, common always first, joined to groups by closed switches.
class NameGroups
{
public:
    NameGroups() { add (std::string (commonNode)); }

    std::size_t add (const std::string& name)
    {
        const auto [place, isFresh] = places_.try_emplace (name, names.size());
        if (isFresh)
        {
            parents_.push_back (names.size());
            names.push_back (name);
        }
        return place->second;
    }

    /// The earliest name of a group stands for it, so common stays in front.
    std::size_t root (std::size_t index)
    {
        while (parents_[index] != index)
        {
            parents_[index] = parents_[parents_[index]];
            index = parents_[index];
        }
        return index;
    }

    void join (std::size_t a, std::size_t b)
    {
        const auto rootA = root (a);
        const auto rootB = root (b);
        parents_[std::max (rootA, rootB)] = std::min (rootA, rootB);
    }

    std::vector<std::string> names;

private:
    std::map<std::string, std::size_t> places_;
    std::vector<std::size_t> parents_;
};

NameGroups groupNames (const Netlist& netlist)
{
    NameGroups groups;
    for (const auto& source : netlist.sources)
        groups.add (source.node);
    for (const auto& part : netlist.parts)
        for (const auto& node : part.nodes)
            groups.add (node);
    groups.add (netlist.output);

    for (const auto& part : netlist.parts)
    {
        const auto* contact = std::get_if<Switch> (&part.value);
        if (contact != nullptr && contact->closed && part.nodes.size() == leadCount (part.value))
            groups.join (groups.add (part.nodes[0]), groups.add (part.nodes[1]));
    }
    return groups;
}

} // namespace

NodeMap::NodeMap (const Netlist& netlist)
{
    auto groups = groupNames (netlist);
    std::vector<int> numberOfRoot (groups.names.size(), unknown);
    numberOfRoot[0] = common;

    for (std::size_t index = 0; index < groups.names.size(); ++index)
    {
        auto& number = numberOfRoot[groups.root (index)];
        if (number == unknown)
        {
            number = count();
            members_.emplace_back();
        }
        if (number != common)
            members_[static_cast<std::size_t> (number)].push_back (groups.names[index]);
        numbers_.emplace (groups.names[index], number);
    }
}

int NodeMap::find (std::string_view name) const
{
    const auto place = numbers_.find (name);
    return place == numbers_.end() ? unknown : place->second;
}

const std::string& NodeMap::nameOf (int node) const
{
    static const std::string commonName (commonNode);
    return node == common ? commonName : members (node).front();
}

} // namespace stopwright
