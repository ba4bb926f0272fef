// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SheetLettering.h"

#include "Sheet/CardGraph.h"
#include "Sheet/SheetText.h"
#include "Sheet/TextWidth.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr double tolerance = 1e-6; ///< points

bool fits (const DrawnText& line, const DrawingBox& place)
{
    return textBox (line).width <= place.width + tolerance;
}

bool letterItem (SheetItem& item, const std::vector<LabelLine>& lines)
{
    bool isGood = item.label.size() == lines.size();
    for (std::size_t line = 0; line < std::min (lines.size(), item.label.size()); ++line)
    {
        item.label[line].text = lines[line].text;
        isGood = fits (item.label[line], item.labelBox) && isGood;
    }
    return isGood;
}

bool areRailsAsDrawn (const SchematicLayout& layout, const CardGraph& graph)
{
    return std::ranges::all_of (graph.nodes,
                                [&] (const GraphNode& node)
                                {
                                    const auto* const drawn = layout.findNode (node.name);
                                    return node.role != NodeRole::rail || drawn == nullptr
                                           || std::ranges::all_of (drawn->signs, [&] (const SheetSign& sign)
                                                                   { return sign.isAbove == node.isAbove; });
                                });
}

} // namespace

bool letterAnew (SchematicLayout& layout, const Card& card)
{
    const auto graph = graphOf (card);
    bool isGood = areRailsAsDrawn (layout, graph);
    for (const auto& element : graph.elements)
    {
        if (element.kind == ElementKind::output)
            continue;
        const auto index = element.kind == ElementKind::tap ? element.index : card.taps.size() + element.index;
        isGood = index < layout.items.size() && letterItem (layout.items[index], labelLines (card, element)) && isGood;
    }
    return isGood;
}

} // namespace stopwright
