// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/IslandSheet.h"

#include <algorithm>
#include <limits>

namespace stopwright
{

namespace
{

constexpr int greatestSpread = 8;
constexpr int looseGap = 2;

void measure (IslandSheet& sheet)
{
    sheet.low = { std::numeric_limits<int>::max(), std::numeric_limits<int>::max() };
    sheet.high = { std::numeric_limits<int>::min(), std::numeric_limits<int>::min() };
    const auto include = [&] (GridPoint at)
    {
        sheet.low = { std::min (sheet.low.x, at.x), std::min (sheet.low.y, at.y) };
        sheet.high = { std::max (sheet.high.x, at.x), std::max (sheet.high.y, at.y) };
    };
    for (const auto& block : sheet.blocks)
    {
        include ({ block.at.x - block.left, block.at.y - block.top });
        include ({ block.at.x + block.right, block.at.y + block.bottom });
    }
    for (const auto& wire : sheet.wires.wires)
        for (const auto& line : wire.shape.lines)
            for (const auto& point : line)
                include (point);
    if (sheet.wires.hasRail)
        include (sheet.wires.railSign + GridPoint { 0, 1 });
}

/// Sets the output to the right of all else. An output on its own keeps its distance from a left edge at 0.
void moveOutput (const CardGraph& graph, std::vector<SheetBlock>& blocks, int leastWidth)
{
    int left = blocks.size() > 1 ? std::numeric_limits<int>::max() : 0;
    int right = 0;
    SheetBlock* output = nullptr;
    for (auto& block : blocks)
        if (graph.elements[static_cast<std::size_t> (block.element)].kind == ElementKind::output)
            output = &block;
        else
        {
            left = std::min (left, block.at.x - block.left);
            right = std::max (right, block.at.x + block.right);
        }
    if (output != nullptr)
        output->at.x = std::max ({ output->at.x, right + 1, left + leastWidth + 1 });
}

} // namespace

std::optional<IslandSheet> layOutIsland (const Card& card,
                                         const CardGraph& graph,
                                         const std::vector<int>& island,
                                         int leastWidth,
                                         LayoutEffort& effort)
{
    auto placed = islandBlocks (card, graph, island);
    IslandSheet sheet;
    for (int spread = 0; spread <= greatestSpread; ++spread)
    {
        const auto spacing = spaceBlocks (placed, spread);
        moveOutput (graph, placed.blocks, leastWidth);
        if (auto wires = layWires (graph, placed, spacing, spread == greatestSpread, effort))
        {
            sheet.wires = std::move (*wires);
            break;
        }
        if (effort.isSpent())
            return std::nullopt;
    }
    sheet.blocks = std::move (placed.blocks);
    measure (sheet);
    if (sheet.blocks.size() == 1)
        sheet.low.x = std::min (sheet.low.x, 0);
    return sheet;
}

IslandSheet
    layOutInLines (const Card& card, const CardGraph& graph, const std::vector<int>& elements, int greatestWidth)
{
    IslandSheet sheet;
    const std::vector<int> layers (graph.nodes.size(), -1);
    GridPoint next;
    int lineTop = 0;
    int lineBottom = 0;
    for (const int element : elements)
    {
        const auto stance = stanceOf (card, graph, layers, graph.elements[static_cast<std::size_t> (element)]);
        auto block = makeBlock (card, graph, element, stance, false);
        if (next.x > 0 && next.x + block.left + block.right > greatestWidth)
        {
            lineTop = lineBottom + looseGap;
            next.x = 0;
        }
        block.at = { next.x + block.left, lineTop + block.top };
        next.x = block.at.x + block.right + looseGap;
        lineBottom = std::max (lineBottom, block.at.y + block.bottom);
        sheet.blocks.push_back (std::move (block));
    }
    measure (sheet);
    return sheet;
}

void shift (IslandSheet& sheet, GridPoint by)
{
    for (auto& block : sheet.blocks)
        block.at = block.at + by;
    for (auto& wire : sheet.wires.wires)
    {
        for (auto& line : wire.shape.lines)
            for (auto& point : line)
                point = point + by;
        for (auto& dot : wire.shape.dots)
            dot = dot + by;
    }
    sheet.wires.railSign = sheet.wires.railSign + by;
    sheet.low = sheet.low + by;
    sheet.high = sheet.high + by;
}

} // namespace stopwright
