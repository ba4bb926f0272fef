// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SheetFaults.h"

#include "Sheet/TextWidth.h"
#include "Sheet/WireFaults.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace stopwright
{

namespace
{

constexpr double slack = 0.01;

struct NamedBox
{
    std::string name;
    DrawingBox box;
};

double distanceTo (const DrawingBox& box, DrawingPoint point)
{
    const double x = std::max ({ box.x - point.x, point.x - box.right(), 0.0 });
    const double y = std::max ({ box.y - point.y, point.y - box.bottom(), 0.0 });
    return std::hypot (x, y);
}

std::string nameOf (const SheetItem& item)
{
    return item.kind == SheetItemKind::output ? "output" : item.name;
}

class FaultFinder
{
public:
    FaultFinder (const Card& card, const SchematicLayout& layout) : card_ (card), layout_ (layout) {}

    std::vector<std::string> find()
    {
        findPlaces();
        findOverlaps();
        findTexts();
        findOrder();
        findUpright();
        auto wires = wireFaults (layout_);
        faults_.insert (faults_.end(), wires.begin(), wires.end());
        return std::move (faults_);
    }

private:
    void expect (bool isRight, const std::string& fault)
    {
        if (! isRight)
            faults_.push_back (fault);
    }

    void expectTerminals (const SheetItem& item, const std::vector<std::string>& nodes)
    {
        expect (item.terminals.size() == nodes.size(), nameOf (item) + " has another number of leads");
        for (std::size_t lead = 0; lead < std::min (nodes.size(), item.terminals.size()); ++lead)
            expect (item.terminals[lead].node == nodes[lead], nameOf (item) + " leads to another node");
    }

    void findPlaces()
    {
        const std::size_t outputs = card_.output.empty() ? 0 : 1;
        expect (layout_.items.size() == card_.taps.size() + card_.parts.size() + outputs,
                "the number of items differs");
        std::set<std::pair<SheetItemKind, std::size_t>> seen;
        for (const auto& item : layout_.items)
        {
            expect (seen.insert ({ item.kind, item.index }).second, nameOf (item) + " is there twice");
            if (item.kind == SheetItemKind::tap)
                expectTerminals (item, { card_.taps.at (item.index).node });
            else if (item.kind == SheetItemKind::output)
                expectTerminals (item, { card_.output });
            else
                expectTerminals (item, card_.parts.at (item.index).nodes);
            expectOnSheet (nameOf (item), item.body);
            expectOnSheet (nameOf (item) + "'s label", item.labelBox);
        }
    }

    void expectOnSheet (const std::string& name, const DrawingBox& box)
    {
        expect (box.x >= 0.0 && box.y >= 0.0 && box.right() <= layout_.width && box.bottom() <= layout_.height,
                name + " is off the sheet");
    }

    void findOverlaps()
    {
        for (std::size_t a = 0; a < layout_.items.size(); ++a)
            for (std::size_t b = 0; b < a; ++b)
            {
                const auto& item = layout_.items[a];
                const auto& other = layout_.items[b];
                const auto names = nameOf (item) + " and " + nameOf (other);
                expect (! item.body.meets (other.body), names + " lie on each other");
                const double apart = std::hypot (item.middle.x - other.middle.x, item.middle.y - other.middle.y);
                expect (apart >= item.ringRadius + other.ringRadius - slack, "the rings of " + names + " overlap");
            }
    }

    std::vector<NamedBox> texts() const
    {
        std::vector<NamedBox> boxes;
        for (const auto& item : layout_.items)
            boxes.push_back ({ "label of " + nameOf (item), item.labelBox });
        for (const auto& node : layout_.nodes)
        {
            if (! node.label.text.empty())
                boxes.push_back ({ "name of node " + node.name, textBox (node.label) });
            for (const auto& sign : node.signs)
                if (! sign.name.text.empty())
                    boxes.push_back ({ "name at a sign of " + node.name, textBox (sign.name) });
        }
        return boxes;
    }

    void findTexts()
    {
        for (const auto& item : layout_.items)
            for (const auto& line : item.label)
            {
                const auto box = textBox (line);
                expect (box.x >= item.labelBox.x - slack && box.right() <= item.labelBox.right() + slack
                            && box.y >= item.labelBox.y - 1.0 && box.bottom() <= item.labelBox.bottom() + 1.0,
                        "a line of the label of " + nameOf (item) + " leaves its box");
            }
        const auto boxes = texts();
        const auto pieces = wirePieces (layout_);
        for (std::size_t a = 0; a < boxes.size(); ++a)
        {
            expectOnSheet (boxes[a].name, boxes[a].box);
            for (std::size_t b = 0; b < a; ++b)
                expect (! boxes[a].box.meets (boxes[b].box), boxes[a].name + " meets " + boxes[b].name);
            for (const auto& item : layout_.items)
            {
                expect (! boxes[a].box.meets (item.body), boxes[a].name + " meets " + nameOf (item));
                expect (distanceTo (boxes[a].box, item.middle) >= item.ringRadius - slack,
                        boxes[a].name + " meets the ring of " + nameOf (item));
            }
            for (const auto& piece : pieces)
                expect (! boxes[a].box.meets (piece.box()), boxes[a].name + " lies on a wire of " + piece.node);
        }
    }

    bool isSignal (const std::string& node) const
    {
        const auto* found = layout_.findNode (node);
        return found != nullptr && found->signs.empty() && node != commonNode;
    }

    void findOrder()
    {
        for (const auto& item : layout_.items)
            for (const auto& other : layout_.items)
            {
                const bool isFed = item.kind == SheetItemKind::tap && other.kind != SheetItemKind::tap
                                   && isSignal (item.terminals.front().node)
                                   && std::any_of (other.terminals.begin(), other.terminals.end(),
                                                   [&] (const auto& terminal)
                                                   { return terminal.node == item.terminals.front().node; });
                expect (! isFed || item.middle.x < other.middle.x, item.name + " is right of " + nameOf (other));
                const bool isOutput = item.kind == SheetItemKind::output && other.kind != SheetItemKind::output
                                      && isSignal (item.terminals.front().node);
                expect (! isOutput || item.middle.x > other.middle.x, nameOf (other) + " is right of the output");
            }
    }

    void findUpright()
    {
        for (const auto& item : layout_.items)
        {
            if (item.kind != SheetItemKind::part || item.terminals.size() != 2)
                continue;
            for (std::size_t lead = 0; lead < 2; ++lead)
                if (item.terminals[lead].node == commonNode && isSignal (item.terminals[1 - lead].node))
                    expect (item.terminals[lead].at.y > item.middle.y, item.name + " does not stand on common");
        }
    }

    const Card& card_;
    const SchematicLayout& layout_;
    std::vector<std::string> faults_;
};

} // namespace

std::vector<std::string> sheetFaults (const Card& card, const SchematicLayout& layout)
{
    return FaultFinder (card, layout).find();
}

} // namespace stopwright
