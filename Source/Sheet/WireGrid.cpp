// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/WireGrid.h"

#include <algorithm>

namespace stopwright
{

WireGrid::WireGrid (int width, int height)
    : width_ (width),
      height_ (height),
      isBlocked_ (static_cast<std::size_t> (width) * static_cast<std::size_t> (height)),
      pins_ (isBlocked_.size(), noNet),
      reserved_ (pins_),
      steps_ (isBlocked_.size(), { noNet, noNet, noNet, noNet })
{}

void WireGrid::block (GridPoint at)
{
    if (contains (at))
        isBlocked_[indexOf (at)] = 1;
}

void WireGrid::setPin (GridPoint at, int net)
{
    pins_[indexOf (at)] = net;
}

void WireGrid::reserve (GridPoint at, int net)
{
    if (contains (at) && reserved_[indexOf (at)] == noNet)
        reserved_[indexOf (at)] = net;
}

void WireGrid::setNet (std::size_t point, int direction, int net)
{
    steps_[point][static_cast<std::size_t> (direction)] = net;
    steps_[neighbour (point, direction)][static_cast<std::size_t> ((direction + 2) % 4)] = net;
}

int WireGrid::degree (std::size_t point, int net) const noexcept
{
    int count = 0;
    for (const int owner : steps_[point])
        count += owner == net ? 1 : 0;
    return count;
}

bool WireGrid::isForeign (std::size_t point, int net) const noexcept
{
    return std::any_of (steps_[point].begin(), steps_[point].end(),
                        [net] (int owner) { return owner != noNet && owner != net; });
}

bool WireGrid::isCrossable (std::size_t point, int direction, int net) const noexcept
{
    const auto along = static_cast<std::size_t> (direction % 2);
    const auto across = 1 - along;
    const auto& owners = steps_[point];
    const auto isForeignOwner = [&] (int owner) { return owner != noNet && owner != net; };
    if (isForeignOwner (owners[along]) || isForeignOwner (owners[along + 2]))
        return false;
    return owners[across] == owners[across + 2]
           || (! isForeignOwner (owners[across]) && ! isForeignOwner (owners[across + 2]));
}

} // namespace stopwright
