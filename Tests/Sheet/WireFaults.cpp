// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/WireFaults.h"

#include "Sheet/SheetFaults.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace stopwright
{

namespace
{

constexpr double slack = 0.01;

using Spot = std::pair<long, long>;

Spot spotOf (DrawingPoint point)
{
    return { std::lround (10.0 * point.x), std::lround (10.0 * point.y) };
}

bool isLying (const WirePiece& piece)
{
    return piece.from.y == piece.to.y;
}

enum class Meeting
{
    none,
    crossing, ///< both run on straight
    clash
};

bool isInside (double at, double a, double b)
{
    return at > std::min (a, b) + slack && at < std::max (a, b) - slack;
}

Meeting meetingOf (const WirePiece& a, const WirePiece& b)
{
    const auto boxA = a.box();
    const auto boxB = b.box();
    if (boxA.x > boxB.right() + slack || boxB.x > boxA.right() + slack || boxA.y > boxB.bottom() + slack
        || boxB.y > boxA.bottom() + slack)
        return Meeting::none;
    if (isLying (a) == isLying (b))
        return Meeting::clash;
    const auto& lying = isLying (a) ? a : b;
    const auto& standing = isLying (a) ? b : a;
    return isInside (standing.from.x, lying.from.x, lying.to.x)
                   && isInside (lying.from.y, standing.from.y, standing.to.y)
               ? Meeting::crossing
               : Meeting::clash;
}

/// Spots that hang together, by union.
class Pieces
{
public:
    Spot rootOf (Spot spot)
    {
        parents_.emplace (spot, spot);
        while (parents_.at (spot) != spot)
            spot = parents_.at (spot);
        return spot;
    }

    void join (Spot a, Spot b) { parents_[rootOf (a)] = rootOf (b); }

private:
    std::map<Spot, Spot> parents_;
};

class WireInspector
{
public:
    explicit WireInspector (const SchematicLayout& layout) : layout_ (layout), pieces_ (wirePieces (layout)) {}

    std::vector<std::string> inspect()
    {
        inspectMeetings();
        inspectSymbols();
        for (const auto& node : layout_.nodes)
            inspectNode (node);
        return std::move (faults_);
    }

private:
    void expect (bool isRight, const std::string& fault)
    {
        if (! isRight)
            faults_.push_back (fault);
    }

    void inspectMeetings()
    {
        for (std::size_t a = 0; a < pieces_.size(); ++a)
        {
            const auto& piece = pieces_[a];
            expect (piece.from.x == piece.to.x || piece.from.y == piece.to.y,
                    "a wire of " + piece.node + " runs slantwise");
            for (std::size_t b = 0; b < a; ++b)
                if (piece.node != pieces_[b].node)
                    expect (meetingOf (piece, pieces_[b]) != Meeting::clash,
                            "wires of " + piece.node + " and " + pieces_[b].node + " clash");
        }
    }

    void inspectSymbols()
    {
        for (const auto& item : layout_.items)
        {
            const double reach = item.ringRadius > 0.0 ? item.ringRadius - 1.0 : item.body.width / 2.0;
            const DrawingBox kept { item.middle.x - reach, item.middle.y - reach, 2.0 * reach, 2.0 * reach };
            for (const auto& piece : pieces_)
                expect (! piece.box().meets (kept), "a wire of " + piece.node + " runs through " + item.name);
        }
    }

    std::vector<DrawingPoint> terminalsOf (const SheetNode& node) const
    {
        std::vector<DrawingPoint> points;
        for (const auto& item : layout_.items)
            for (const auto& terminal : item.terminals)
                if (terminal.node == node.name)
                    points.push_back (terminal.at);
        return points;
    }

    void inspectNode (const SheetNode& node)
    {
        const auto terminals = terminalsOf (node);
        std::map<Spot, int> ends;
        Pieces pieces;
        for (const auto& wire : node.wires)
        {
            expect (wire.size() >= 2, "a wire of " + node.name + " has no length");
            ++ends[spotOf (wire.front())];
            ++ends[spotOf (wire.back())];
            pieces.join (spotOf (wire.front()), spotOf (wire.back()));
        }
        std::set<Spot> held;
        for (const auto& sign : node.signs)
            held.insert (spotOf (sign.at));
        inspectReach (node, terminals, held, pieces);
        for (const auto& terminal : terminals)
            held.insert (spotOf (terminal));
        for (const auto& [spot, count] : ends)
            expect (count > 1 || held.contains (spot) || terminals.size() == 1,
                    "a wire of " + node.name + " ends nowhere");
        for (const auto& dot : node.dots)
            expect (ends[spotOf (dot)] >= 3, "a dot of " + node.name + " is no junction");
        for (const auto& [spot, count] : ends)
            expect (count < 3
                        || std::any_of (node.dots.begin(), node.dots.end(),
                                        [&, at = spot] (const auto& dot) { return spotOf (dot) == at; }),
                    "a junction of " + node.name + " has no dot");
    }

    /// All leads on one wire; where there are signs, each on a wire that has one.
    void inspectReach (const SheetNode& node,
                       const std::vector<DrawingPoint>& terminals,
                       const std::set<Spot>& signs,
                       Pieces& pieces)
    {
        std::set<Spot> wanted;
        for (const auto& sign : signs)
            wanted.insert (pieces.rootOf (sign));
        if (signs.empty() && ! terminals.empty())
            wanted.insert (pieces.rootOf (spotOf (terminals.front())));
        for (const auto& terminal : terminals)
            expect (wanted.contains (pieces.rootOf (spotOf (terminal))), "a lead to " + node.name + " is left out");
        expect (terminals.empty() || ! node.wires.empty(), node.name + " has no wire to click");
    }

    const SchematicLayout& layout_;
    std::vector<WirePiece> pieces_;
    std::vector<std::string> faults_;
};

} // namespace

DrawingBox WirePiece::box() const
{
    return { std::min (from.x, to.x), std::min (from.y, to.y), std::abs (from.x - to.x), std::abs (from.y - to.y) };
}

std::vector<WirePiece> wirePieces (const SchematicLayout& layout)
{
    std::vector<WirePiece> pieces;
    for (const auto& node : layout.nodes)
        for (const auto& wire : node.wires)
            for (std::size_t point = 1; point < wire.size(); ++point)
                pieces.push_back ({ node.name, wire[point - 1], wire[point] });
    return pieces;
}

std::vector<std::string> wireFaults (const SchematicLayout& layout)
{
    return WireInspector (layout).inspect();
}

int crossingsOf (const SchematicLayout& layout)
{
    const auto pieces = wirePieces (layout);
    int count = 0;
    for (std::size_t a = 0; a < pieces.size(); ++a)
        for (std::size_t b = 0; b < a; ++b)
            count += pieces[a].node != pieces[b].node && meetingOf (pieces[a], pieces[b]) == Meeting::crossing ? 1 : 0;
    return count;
}

} // namespace stopwright
