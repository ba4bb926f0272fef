// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/SheetGrid.h"

#include <array>
#include <cstdint>
#include <vector>

namespace stopwright
{

/// Which wires lie where on a grid: every step between neighbouring points belongs to one net or to none. Two nets never
/// share a step; they may share a point only where both run straight across each other. Threading: one thread at a time.
class WireGrid
{
public:
    static constexpr int noNet = -1;
    static constexpr std::array<GridPoint, 4> directions { { { 1, 0 }, { 0, 1 }, { -1, 0 }, { 0, -1 } } };

    /// Points from (0, 0) to (width - 1, height - 1).
    WireGrid (int width, int height);

    int width() const noexcept { return width_; }

    int height() const noexcept { return height_; }

    std::size_t pointCount() const noexcept { return isBlocked_.size(); }

    std::size_t indexOf (GridPoint at) const noexcept
    {
        return static_cast<std::size_t> (at.y) * static_cast<std::size_t> (width_) + static_cast<std::size_t> (at.x);
    }

    GridPoint pointAt (std::size_t index) const noexcept
    {
        return { static_cast<int> (index) % width_, static_cast<int> (index) / width_ };
    }

    bool contains (GridPoint at) const noexcept { return at.x >= 0 && at.y >= 0 && at.x < width_ && at.y < height_; }

    /// No wire may touch the point.
    void block (GridPoint at);

    /// Only this net's wires may touch the point, also where it is blocked: a lead ends there.
    void setPin (GridPoint at, int net);

    /// Keeps a free point for the net, so that no other wire shuts a lead in.
    void reserve (GridPoint at, int net);

    /// Whether a wire of the net may touch the point, other wires left aside.
    bool isOpenTo (std::size_t point, int net) const noexcept
    {
        return pins_[point] == net
               || (pins_[point] == noNet && ! isBlocked_[point]
                   && (reserved_[point] == noNet || reserved_[point] == net));
    }

    bool isPin (std::size_t point) const noexcept { return pins_[point] != noNet; }

    /// The net of the step from a point in one of the four directions.
    int netOf (std::size_t point, int direction) const noexcept
    {
        return steps_[point][static_cast<std::size_t> (direction)];
    }

    /// Gives the step to a net, or to none.
    void setNet (std::size_t point, int direction, int net);

    std::size_t neighbour (std::size_t point, int direction) const noexcept
    {
        const auto along = static_cast<std::size_t> (direction % 2 == 0 ? 1 : width_);
        return direction < 2 ? point + along : point - along;
    }

    bool hasNeighbour (std::size_t point, int direction) const noexcept
    {
        return contains (pointAt (point) + directions[static_cast<std::size_t> (direction)]);
    }

    /// How many steps of the net meet at the point.
    int degree (std::size_t point, int net) const noexcept;

    /// Whether another net has a step at the point.
    bool isForeign (std::size_t point, int net) const noexcept;

    /// Whether a wire of the net may run straight over the point in that direction: it is free of other nets, or another
    /// net runs straight across.
    bool isCrossable (std::size_t point, int direction, int net) const noexcept;

private:
    int width_;
    int height_;
    std::vector<std::uint8_t> isBlocked_;
    std::vector<int> pins_;
    std::vector<int> reserved_;
    std::vector<std::array<int, 4>> steps_;
};

} // namespace stopwright
