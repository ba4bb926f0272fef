// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/WireShape.h"

#include <array>

namespace stopwright
{

namespace
{

class ShapeMaker
{
public:
    ShapeMaker (const WireGrid& grid, int net) : grid_ (grid), net_ (net), isDrawn_ (grid.pointCount()) {}

    WireShape make()
    {
        for (std::size_t point = 0; point < grid_.pointCount(); ++point)
        {
            const int degree = grid_.degree (point, net_);
            if (degree == 0 || degree == 2)
                continue;
            if (degree > 2)
                shape_.dots.push_back (grid_.pointAt (point));
            for (int direction = 0; direction < 4; ++direction)
                if (isLeft (point, direction))
                    follow (point, direction);
        }
        return std::move (shape_);
    }

private:
    bool isLeft (std::size_t point, int direction) const
    {
        return grid_.netOf (point, direction) == net_ && ! isDrawn_[point][static_cast<std::size_t> (direction)];
    }

    void follow (std::size_t point, int direction)
    {
        std::vector<GridPoint> line { grid_.pointAt (point) };
        while (true)
        {
            isDrawn_[point][static_cast<std::size_t> (direction)] = true;
            point = grid_.neighbour (point, direction);
            isDrawn_[point][static_cast<std::size_t> ((direction + 2) % 4)] = true;
            if (grid_.degree (point, net_) != 2)
                break;
            const int next = onward (point, direction);
            if (next != direction)
                line.push_back (grid_.pointAt (point));
            direction = next;
        }
        line.push_back (grid_.pointAt (point));
        shape_.lines.push_back (std::move (line));
    }

    int onward (std::size_t point, int arrival) const
    {
        for (int direction = 0; direction < 4; ++direction)
            if (direction != (arrival + 2) % 4 && grid_.netOf (point, direction) == net_)
                return direction;
        return arrival;
    }

    const WireGrid& grid_;
    int net_;
    std::vector<std::array<bool, 4>> isDrawn_;
    WireShape shape_;
};

} // namespace

WireShape wireShape (const WireGrid& grid, int net)
{
    return ShapeMaker (grid, net).make();
}

} // namespace stopwright
