// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/BlockSpacing.h"

#include <algorithm>
#include <limits>

namespace stopwright
{

namespace
{

constexpr int leastColumnStep = SheetGrid::leadSteps + 1; ///< from a ring to the upright beside it
constexpr int besideUpright = 2;                          ///< from an upright to what hangs beside it
constexpr int leastRowStep = 2 * SheetGrid::leadSteps + 1;

class Spacer
{
public:
    Spacer (IslandBlocks& island, int spread) : island_ (island), spread_ (spread) {}

    BlockSpacing space()
    {
        spaceColumns();
        spaceRows();
        for (auto& block : island_.blocks)
            block.at = { columnOf (block), rowOf (block) };
        placeRail();
        return std::move (spacing_);
    }

private:
    int columnOf (const SheetBlock& block) const
    {
        return spacing_.columns[static_cast<std::size_t> (block.column)] + block.aside;
    }

    int rowOf (const SheetBlock& block) const { return spacing_.rows[static_cast<std::size_t> (block.row)]; }

    /// Whether the first of two columns has only uprights, to which the second belongs.
    bool isUprightOf (int column, int next) const
    {
        const auto& places = island_.columnPlaces;
        return places[static_cast<std::size_t> (column)] == places[static_cast<std::size_t> (next)]
               && std::none_of (island_.blocks.begin(), island_.blocks.end(),
                                [&] (const SheetBlock& block) { return block.column == column; });
    }

    /// How far blocks in the path reach to the left or right of their column: uprights keep off them.
    int reachLeft (int column) const
    {
        int most = 0;
        for (const auto& block : island_.blocks)
            if (block.column == column && block.stance.stance == Stance::across)
                most = std::max (most, block.clearLeft - block.aside);
        return most;
    }

    int reachRight (int column) const
    {
        int most = 0;
        for (const auto& block : island_.blocks)
            if (block.column == column && block.stance.stance == Stance::across)
                most = std::max (most, block.clearRight + block.aside);
        return most;
    }

    void spaceColumns()
    {
        const auto count = static_cast<int> (island_.columnPlaces.size());
        spacing_.columns.assign (static_cast<std::size_t> (count), 0);
        for (int column = 1; column < count; ++column)
        {
            const int before = spacing_.columns[static_cast<std::size_t> (column - 1)];
            int at = before + (isUprightOf (column - 1, column) ? besideUpright : leastColumnStep) + spread_;
            at = std::max (at, before + reachRight (column - 1) + 1 + spread_);
            at = std::max (at, before + reachLeft (column) + 1 + spread_);
            for (const auto& block : island_.blocks)
                for (const auto& other : island_.blocks)
                    if (block.column == column && other.column < column && other.row == block.row)
                        at = std::max (at, columnOf (other) + other.right + block.left - block.aside + 1 + spread_);
            spacing_.columns[static_cast<std::size_t> (column)] = at;
        }
    }

    bool areAbove (const SheetBlock& block, const SheetBlock& other) const
    {
        return columnOf (block) - block.left < columnOf (other) + other.right
               && columnOf (other) - other.left < columnOf (block) + block.right;
    }

    void spaceRows()
    {
        spacing_.rows.assign (static_cast<std::size_t> (island_.rowCount), 0);
        for (int row = 1; row < island_.rowCount; ++row)
        {
            int step = leastRowStep;
            for (const auto& block : island_.blocks)
            {
                const bool isTap = island_.columnPlaces[static_cast<std::size_t> (block.column)] < -1;
                step = block.row == row && ! isTap ? std::max (step, block.top + 1) : step;
                step = block.row == row - 1 && ! isTap ? std::max (step, block.bottom + 1) : step;
            }
            int at = spacing_.rows[static_cast<std::size_t> (row - 1)] + step + spread_;
            for (const auto& block : island_.blocks)
                for (const auto& other : island_.blocks)
                    if (block.row == row && other.row < row && areAbove (block, other))
                        at = std::max (at, rowOf (other) + other.bottom + block.top + 1 + spread_);
            spacing_.rows[static_cast<std::size_t> (row)] = at;
        }
    }

    /// Below everything that stands over the rail.
    void placeRail()
    {
        int left = std::numeric_limits<int>::max();
        int right = std::numeric_limits<int>::min();
        for (const auto& block : island_.blocks)
            if (block.joinsRail)
            {
                left = std::min (left, block.at.x);
                right = std::max (right, block.at.x);
                spacing_.rail = std::max (spacing_.rail, block.at.y + SheetGrid::leadSteps + 1 + spread_);
            }
        for (const auto& block : island_.blocks)
            if (block.at.x - block.left <= right && block.at.x + block.right >= left)
                spacing_.rail = std::max (spacing_.rail, block.at.y + block.bottom + 1);
    }

    IslandBlocks& island_;
    int spread_;
    BlockSpacing spacing_;
};

} // namespace

BlockSpacing spaceBlocks (IslandBlocks& island, int spread)
{
    return Spacer (island, spread).space();
}

} // namespace stopwright
