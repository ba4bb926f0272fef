// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SignalLayers.h"

#include "Sheet/SignalFlow.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <tuple>

namespace stopwright
{

namespace
{

constexpr int sweeps = 400;
constexpr double potentialSteps = 1e4; ///< potentials that differ by less count as equal

class LayerFinder
{
public:
    LayerFinder (const Card& card, const CardGraph& graph, const std::vector<int>& island)
        : edges_ (flowEdges (card, graph, island)),
          isMember_ (graph.nodes.size()),
          isTapped_ (graph.nodes.size()),
          depth_ (graph.nodes.size(), unreached)
    {
        for (const int index : island)
            note (graph, graph.elements[static_cast<std::size_t> (index)]);
    }

    std::vector<int> find()
    {
        chooseEnds();
        const auto potential = potentials();
        return layersOf (orderBy (potential));
    }

private:
    static constexpr int unreached = std::numeric_limits<int>::max();

    void note (const CardGraph& graph, const GraphElement& element)
    {
        for (const int node : element.nodes)
        {
            if (! graph.isSignal (node))
                continue;
            isMember_[static_cast<std::size_t> (node)] = true;
            if (element.kind == ElementKind::tap)
                isTapped_[static_cast<std::size_t> (node)] = true;
            if (element.kind == ElementKind::output)
                output_ = node;
        }
    }

    std::size_t size() const { return isMember_.size(); }

    /// Distances along the parts from where the signal enters.
    void measureDepth (const std::vector<bool>& starts)
    {
        std::fill (depth_.begin(), depth_.end(), unreached);
        std::vector<std::size_t> queue;
        for (std::size_t node = 0; node < size(); ++node)
            if (starts[node])
            {
                depth_[node] = 0;
                queue.push_back (node);
            }
        for (std::size_t next = 0; next < queue.size(); ++next)
            for (const auto& edge : edges_)
                for (const auto& [from, to] : { std::pair { edge.from, edge.to }, std::pair { edge.to, edge.from } })
                    if (static_cast<std::size_t> (from) == queue[next]
                        && depth_[static_cast<std::size_t> (to)] == unreached)
                    {
                        depth_[static_cast<std::size_t> (to)] = depth_[queue[next]] + 1;
                        queue.push_back (static_cast<std::size_t> (to));
                    }
    }

    std::size_t deepest() const
    {
        std::size_t best = 0;
        int most = -1;
        for (std::size_t node = 0; node < size(); ++node)
            if (isMember_[node] && depth_[node] != unreached && depth_[node] > most)
            {
                most = depth_[node];
                best = node;
            }
        return best;
    }

    /// Where the signal enters and leaves; an island that lacks either gets the node farthest from the other.
    void chooseEnds()
    {
        starts_ = isTapped_;
        std::vector<bool> single (size());
        if (std::find (starts_.begin(), starts_.end(), true) == starts_.end())
        {
            const auto first = output_ ? static_cast<std::size_t> (*output_)
                                       : static_cast<std::size_t> (std::find (isMember_.begin(), isMember_.end(), true)
                                                                   - isMember_.begin());
            single[first] = true;
            measureDepth (single);
            starts_[deepest()] = true;
        }
        measureDepth (starts_);
        end_ = output_ ? static_cast<std::size_t> (*output_) : deepest();
    }

    /// Damped Jacobi relaxation from above, so that what carries no current never falls short of where it hangs.
    std::vector<double> potentials() const
    {
        std::vector<double> potential (size(), 1.0);
        std::vector<double> sum (size());
        std::vector<int> count (size());
        const auto isFixed = [&] (std::size_t node) { return starts_[node] || node == end_; };
        for (std::size_t node = 0; node < size(); ++node)
            if (starts_[node])
                potential[node] = 0.0;
        for (int sweep = 0; sweep < sweeps; ++sweep)
        {
            std::fill (sum.begin(), sum.end(), 0.0);
            std::fill (count.begin(), count.end(), 0);
            for (const auto& edge : edges_)
            {
                const auto from = static_cast<std::size_t> (edge.from);
                const auto to = static_cast<std::size_t> (edge.to);
                sum[from] += potential[to];
                sum[to] += potential[from];
                ++count[from];
                ++count[to];
            }
            for (std::size_t node = 0; node < size(); ++node)
                if (! isFixed (node) && count[node] > 0)
                    potential[node] = 0.5 * potential[node] + 0.5 * sum[node] / count[node];
        }
        return potential;
    }

    /// All nodes of the island one after the other: what feeds a device before what it drives, then by potential.
    std::vector<std::size_t> orderBy (const std::vector<double>& potential) const
    {
        const auto key = [&] (std::size_t node)
        { return std::tuple (std::lround (potential[node] * potentialSteps), depth_[node], node); };
        std::vector<std::size_t> order;
        std::vector<bool> isPlaced (size());
        const auto members = static_cast<std::size_t> (std::count (isMember_.begin(), isMember_.end(), true));
        order.reserve (members);
        while (order.size() < members)
        {
            std::optional<std::size_t> best;
            bool isBestFree = false;
            for (std::size_t node = 0; node < size(); ++node)
            {
                if (! isMember_[node] || isPlaced[node])
                    continue;
                const bool isFree = std::none_of (edges_.begin(), edges_.end(),
                                                  [&] (const FlowEdge& edge)
                                                  {
                                                      return edge.isDirected
                                                             && static_cast<std::size_t> (edge.to) == node
                                                             && ! isPlaced[static_cast<std::size_t> (edge.from)];
                                                  });
                if (! best || isFree > isBestFree || (isFree == isBestFree && key (node) < key (*best)))
                {
                    best = node;
                    isBestFree = isFree;
                }
            }
            isPlaced[*best] = true;
            order.push_back (*best);
        }
        return order;
    }

    /// The longest way to each node; what has nothing before it moves up to what follows, except tapped nodes.
    std::vector<int> layersOf (const std::vector<std::size_t>& order) const
    {
        std::vector<std::size_t> rank (size());
        for (std::size_t place = 0; place < order.size(); ++place)
            rank[order[place]] = place;
        std::vector<int> layer (size(), -1);
        const auto visit = [&] (std::size_t node, const auto& useNeighbour)
        {
            for (const auto& edge : edges_)
            {
                if (static_cast<std::size_t> (edge.from) == node)
                    useNeighbour (static_cast<std::size_t> (edge.to));
                if (static_cast<std::size_t> (edge.to) == node)
                    useNeighbour (static_cast<std::size_t> (edge.from));
            }
        };
        for (const auto node : order)
        {
            layer[node] = 0;
            visit (node,
                   [&] (std::size_t other) {
                       layer[node] = rank[other] < rank[node] ? std::max (layer[node], layer[other] + 1) : layer[node];
                   });
        }
        const std::vector<std::size_t> backward (order.rbegin(), order.rend());
        for (const auto node : backward)
        {
            int next = unreached;
            visit (node,
                   [&] (std::size_t other) { next = rank[other] > rank[node] ? std::min (next, layer[other]) : next; });
            if (layer[node] == 0 && next != unreached && ! isTapped_[node])
                layer[node] = std::max (0, next - 1);
        }
        return layer;
    }

    std::vector<FlowEdge> edges_;
    std::vector<bool> isMember_;
    std::vector<bool> isTapped_;
    std::vector<int> depth_;
    std::optional<int> output_;
    std::vector<bool> starts_;
    std::size_t end_ = 0;
};

} // namespace

std::vector<int> signalLayers (const Card& card, const CardGraph& graph, const std::vector<int>& island)
{
    return LayerFinder (card, graph, island).find();
}

} // namespace stopwright
