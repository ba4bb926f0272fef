// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/LayoutEffort.h"
#include "Sheet/WireGrid.h"

#include <cstdint>
#include <queue>
#include <vector>

namespace stopwright
{

/// The ends that a wire has to join, the columns where its uprights are best put and the lines along which it best lies.
struct WireNet
{
    std::vector<GridPoint> pins;
    std::vector<GridPoint> exits; ///< the points next to the pins by which their wires leave
    std::vector<int> columns;
    std::vector<int> lines;
};

/// Lays the wires of nets on a grid, each as a tree with few bends, few crossings and a short way: the nearest pin is
/// joined to the tree, then the next (Prim), each by the cheapest way (A*: Hart, Nilsson, Raphael 1968), in one search
/// that goes on from the grown tree. Then each net is taken up and laid again between the others. Threading: one thread at a time.
class WireRouter
{
public:
    /// What it visits is taken off the effort.
    WireRouter (WireGrid& grid, const std::vector<WireNet>& nets, LayoutEffort& effort);

    /// Whether all could be laid. Once the effort is spent it looks no further.
    bool route();

private:
    struct State
    {
        int priority = 0;
        int cost = 0;
        std::size_t index = 0; ///< 4 x point + direction of arrival

        bool operator> (const State& other) const noexcept
        {
            return priority != other.priority ? priority > other.priority : index > other.index;
        }
    };

    /// What the cheapest way still costs at least: the way to the box of all targets.
    struct Targets
    {
        GridPoint low;
        GridPoint high;
    };

    bool routeNet (std::size_t index);
    void takeUp (std::size_t net);
    bool laySingle (std::size_t net);
    void begin (const std::vector<GridPoint>& pins);
    void leaveTree (int net, const std::vector<std::size_t>& tree);
    void reach (int net, std::size_t from, std::size_t to, int direction, int cost, std::size_t origin);
    void expand (int net, const State& state);

    /// Lays the way to a state, back to where the tree begins. Returns the new points.
    std::vector<std::size_t> lay (int net, std::size_t state);
    int stepCost (int net, std::size_t to, int direction) const;
    int estimate (std::size_t point) const;

    static constexpr std::size_t noState = static_cast<std::size_t> (-1);

    WireGrid& grid_;
    const std::vector<WireNet>& nets_;
    LayoutEffort& effort_;
    std::vector<int> cost_;
    std::vector<std::size_t> origin_;
    std::vector<std::uint32_t> stamp_;
    std::vector<std::uint8_t> isTarget_;
    std::uint32_t now_ = 0;
    Targets box_;
    std::priority_queue<State, std::vector<State>, std::greater<>> queue_;
};

} // namespace stopwright
