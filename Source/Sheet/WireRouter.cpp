// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/WireRouter.h"

#include <algorithm>
#include <cstdlib>
#include <numeric>

namespace stopwright
{

namespace
{

constexpr int perStep = 10;
constexpr int perBend = 24;
constexpr int perCrossing = 260;
constexpr int perJunction = 4;
constexpr int perFourWay = 30;     ///< four wires on one dot look like a crossing
constexpr int perStrayUpright = 8; ///< for each step of an upright away from its column
constexpr int perStrayLine = 6;    ///< for each step of a lying wire off its lines
constexpr int roundsOfSmall = 3;
constexpr int roundsOfLarge = 2; ///< with more nets than a usual card has
constexpr std::size_t smallCount = 24;

int spanOf (const WireNet& net)
{
    GridPoint low = net.pins.front();
    GridPoint high = low;
    for (const auto& pin : net.pins)
    {
        low = { std::min (low.x, pin.x), std::min (low.y, pin.y) };
        high = { std::max (high.x, pin.x), std::max (high.y, pin.y) };
    }
    return high.x - low.x + high.y - low.y;
}

} // namespace

WireRouter::WireRouter (WireGrid& grid, const std::vector<WireNet>& nets, LayoutEffort& effort)
    : grid_ (grid),
      nets_ (nets),
      effort_ (effort),
      cost_ (4 * grid.pointCount()),
      origin_ (cost_.size(), noState),
      stamp_ (cost_.size()),
      isTarget_ (grid.pointCount())
{
    for (std::size_t net = 0; net < nets.size(); ++net)
        for (const auto& pin : nets[net].pins)
            grid_.setPin (pin, static_cast<int> (net));
    for (std::size_t net = 0; net < nets.size(); ++net)
        for (const auto& exit : nets[net].exits)
            grid_.reserve (exit, static_cast<int> (net));
}

bool WireRouter::route()
{
    std::vector<std::size_t> order (nets_.size());
    std::iota (order.begin(), order.end(), std::size_t { 0 });
    std::stable_sort (order.begin(), order.end(),
                      [&] (std::size_t a, std::size_t b) { return spanOf (nets_[a]) < spanOf (nets_[b]); });
    bool areSinglesLaid = true;
    for (const auto net : order)
        areSinglesLaid = laySingle (net) && areSinglesLaid;
    bool isComplete = areSinglesLaid;
    const int rounds = nets_.size() <= smallCount ? roundsOfSmall : roundsOfLarge;
    for (int round = 0; round < rounds; ++round)
    {
        isComplete = areSinglesLaid;
        for (const auto net : order)
        {
            takeUp (net);
            isComplete = routeNet (net) && isComplete;
        }
    }
    return isComplete;
}

/// A lead that leads to nothing else gets a short end of wire, to be seen and clicked.
bool WireRouter::laySingle (std::size_t net)
{
    if (nets_[net].pins.size() != 1)
        return true;
    const auto pin = grid_.indexOf (nets_[net].pins.front());
    for (int direction = 0; direction < 4; ++direction)
        if (grid_.hasNeighbour (pin, direction)
            && grid_.isOpenTo (grid_.neighbour (pin, direction), static_cast<int> (net))
            && ! grid_.isForeign (grid_.neighbour (pin, direction), static_cast<int> (net)))
        {
            grid_.setNet (pin, direction, static_cast<int> (net));
            return true;
        }
    return false;
}

void WireRouter::takeUp (std::size_t net)
{
    if (nets_[net].pins.size() < 2)
        return;
    for (std::size_t point = 0; point < grid_.pointCount(); ++point)
        for (int direction = 0; direction < 2; ++direction)
            if (grid_.netOf (point, direction) == static_cast<int> (net))
                grid_.setNet (point, direction, WireGrid::noNet);
}

bool WireRouter::routeNet (std::size_t index)
{
    const auto& pins = nets_[index].pins;
    const auto net = static_cast<int> (index);
    begin (pins);
    for (std::size_t pin = 1; pin < pins.size(); ++pin)
        isTarget_[grid_.indexOf (pins[pin])] = 1;
    leaveTree (net, { grid_.indexOf (pins.front()) });
    std::size_t left = pins.size() - 1;
    while (left > 0 && ! queue_.empty() && ! effort_.isSpent())
    {
        --effort_.steps;
        const auto state = queue_.top();
        queue_.pop();
        const auto point = state.index / 4;
        if (state.cost > cost_[state.index] || grid_.degree (point, net) > 0)
            continue;
        if (isTarget_[point] == 0)
        {
            expand (net, state);
            continue;
        }
        isTarget_[point] = 0;
        --left;
        leaveTree (net, lay (net, state.index));
    }
    for (const auto& pin : pins)
        isTarget_[grid_.indexOf (pin)] = 0;
    return left == 0;
}

void WireRouter::begin (const std::vector<GridPoint>& pins)
{
    ++now_;
    queue_ = {};
    box_ = { pins.front(), pins.front() };
    for (const auto& pin : pins)
    {
        box_.low = { std::min (box_.low.x, pin.x), std::min (box_.low.y, pin.y) };
        box_.high = { std::max (box_.high.x, pin.x), std::max (box_.high.y, pin.y) };
    }
}

void WireRouter::leaveTree (int net, const std::vector<std::size_t>& tree)
{
    for (const auto point : tree)
    {
        if (grid_.isForeign (point, net))
            continue;
        const int degree = grid_.degree (point, net);
        const int junction = degree >= 3 ? perFourWay : degree == 2 ? perJunction : 0;
        for (int direction = 0; direction < 4; ++direction)
            if (grid_.hasNeighbour (point, direction) && grid_.netOf (point, direction) == WireGrid::noNet)
                reach (net, point, grid_.neighbour (point, direction), direction, junction, noState);
    }
}

int WireRouter::stepCost (int net, std::size_t to, int direction) const
{
    const auto& wanted = nets_[static_cast<std::size_t> (net)];
    const auto at = grid_.pointAt (to);
    const auto isOn = [] (const std::vector<int>& list, int place)
    { return std::find (list.begin(), list.end(), place) != list.end(); };
    const int stray = direction % 2 == 1 ? (isOn (wanted.columns, at.x) ? 0 : perStrayUpright)
                                         : (isOn (wanted.lines, at.y) ? 0 : perStrayLine);
    return perStep + stray + (grid_.isForeign (to, net) ? perCrossing : 0);
}

int WireRouter::estimate (std::size_t point) const
{
    const auto at = grid_.pointAt (point);
    const int across = std::max ({ box_.low.x - at.x, at.x - box_.high.x, 0 });
    const int down = std::max ({ box_.low.y - at.y, at.y - box_.high.y, 0 });
    return perStep * (across + down);
}

void WireRouter::reach (int net, std::size_t from, std::size_t to, int direction, int cost, std::size_t origin)
{
    if (grid_.netOf (from, direction) != WireGrid::noNet || ! grid_.isOpenTo (to, net)
        || ! grid_.isCrossable (to, direction, net) || grid_.degree (to, net) > 0)
        return;
    const auto index = 4 * to + static_cast<std::size_t> (direction);
    const int total = cost + stepCost (net, to, direction);
    if (stamp_[index] == now_ && cost_[index] <= total)
        return;
    stamp_[index] = now_;
    cost_[index] = total;
    origin_[index] = origin;
    queue_.push ({ total + estimate (to), total, index });
}

void WireRouter::expand (int net, const State& state)
{
    const auto point = state.index / 4;
    const auto arrival = static_cast<int> (state.index % 4);
    const bool isCrossing = grid_.isForeign (point, net);
    for (int direction = 0; direction < 4; ++direction)
    {
        if (direction == (arrival + 2) % 4 || (isCrossing && direction != arrival)
            || ! grid_.hasNeighbour (point, direction))
            continue;
        reach (net, point, grid_.neighbour (point, direction), direction,
               state.cost + (direction == arrival ? 0 : perBend), state.index);
    }
}

std::vector<std::size_t> WireRouter::lay (int net, std::size_t state)
{
    std::vector<std::size_t> laid;
    while (state != noState)
    {
        const auto point = state / 4;
        if (grid_.degree (point, net) > (laid.empty() ? 0 : 1))
            break;
        const auto direction = static_cast<int> (state % 4);
        grid_.setNet (point, (direction + 2) % 4, net);
        laid.push_back (point);
        state = origin_[state];
    }
    return laid;
}

} // namespace stopwright
