// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"

#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

enum class NodeRole
{
    signal, ///< drawn as a wire
    common, ///< circuit common: a rail at the bottom, or a sign wherever it is met
    rail,   ///< held by a supply against common: a sign with its name wherever it is met
    named   ///< of a tangle that no wires can show: the same, above at leads of the upper half of a symbol
};

/// A node of a card, and whether its sign points upward: a rail above common.
struct GraphNode
{
    std::string name;
    NodeRole role = NodeRole::signal;
    bool isAbove = false;
    std::string shortName {}; ///< at its signs
};

enum class ElementKind
{
    tap,
    part,
    output
};

/// Something that has to have its place on the sheet. `nodes` has an entry for each lead, -1 where it leads nowhere.
struct GraphElement
{
    ElementKind kind = ElementKind::part;
    std::size_t index = 0; ///< of the tap or part in the card
    std::vector<int> nodes;
};

/// A card as elements on nodes. Both are in the order of their names, so that what is worked out from it does not depend
/// on the order in the document. An island is what hangs together by signal nodes; the output's comes first, then those
/// with taps. What touches no signal node, such as a supply, is in `loose`. Threading: [control].
struct CardGraph
{
    std::vector<GraphNode> nodes;
    std::vector<GraphElement> elements;
    std::vector<std::vector<int>> islands; ///< indices of elements
    std::vector<int> loose;                ///< indices of elements

    bool isSignal (int node) const;
};

/// Takes any card, also one that NetlistCheck refuses.
CardGraph graphOf (const Card& card);

/// Orders names as people do: R2 before R10.
bool comesBefore (std::string_view name, std::string_view other) noexcept;

} // namespace stopwright
