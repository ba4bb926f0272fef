// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SchematicDrawing.h"

#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double wireWidth = 1.2;
constexpr int ringChords = 48;

class SchematicDrawer
{
public:
    SchematicDrawer (const Card& card, const SchematicLayout& layout, const SchematicStyle& style)
        : card_ (card),
          layout_ (layout),
          style_ (style)
    {
        drawing_.width = layout.width;
        drawing_.height = layout.height;
    }

    Drawing draw()
    {
        for (const auto& node : layout_.nodes)
            addNode (node);
        for (std::size_t index = 0; index < layout_.items.size(); ++index)
            addItem (layout_.items[index], style_.markedItem == index);
        return std::move (drawing_);
    }

private:
    void add (SymbolStrokes strokes)
    {
        for (auto& line : strokes.lines)
            drawing_.lines.push_back (std::move (line));
        for (auto& area : strokes.areas)
            drawing_.areas.push_back (std::move (area));
    }

    void addNode (const SheetNode& node)
    {
        const bool isMarked = ! node.name.empty() && node.name == style_.markedNode;
        const auto ink = isMarked ? Ink::result : Ink::ink;
        for (const auto& wire : node.wires)
            drawing_.lines.push_back ({ wire, ink, isMarked ? 2.0 * wireWidth : wireWidth, false, false });
        for (const auto& dot : node.dots)
            drawing_.areas.push_back (SchematicSymbol::dot (dot, ink));
        for (const auto& sign : node.signs)
        {
            add (SchematicSymbol::bar (sign.at, ink));
            if (! sign.name.text.empty())
                drawing_.texts.push_back (sign.name);
        }
        if (style_.showsNodeNames && ! node.label.text.empty())
        {
            drawing_.texts.push_back (node.label);
            drawing_.texts.back().ink = isMarked ? Ink::result : node.label.ink;
        }
    }

    void addItem (const SheetItem& item, bool isMarked)
    {
        const auto ink = isMarked ? Ink::result : item.kind == SheetItemKind::tap ? Ink::source : Ink::ink;
        if (item.kind == SheetItemKind::tap)
            add (SchematicSymbol::of (card_.taps[item.index].wave, item.middle, ink));
        else if (item.kind == SheetItemKind::output)
            add (SchematicSymbol::output (item.middle, Ink::result));
        else
            add (SchematicSymbol::of (card_.parts[item.index].value, item.pose, item.middle, ink, style_.resistor));
        if (isMarked && item.ringRadius > 0.0)
            addRing (item);
        drawing_.texts.insert (drawing_.texts.end(), item.label.begin(), item.label.end());
    }

    void addRing (const SheetItem& item)
    {
        DrawnLine ring { {}, Ink::result, 1.0, true, false };
        ring.points.reserve (ringChords);
        for (int chord = 0; chord < ringChords; ++chord)
        {
            const double angle = 2.0 * std::numbers::pi * chord / ringChords;
            ring.points.push_back ({ item.middle.x + item.ringRadius * std::cos (angle),
                                     item.middle.y + item.ringRadius * std::sin (angle) });
        }
        drawing_.lines.push_back (std::move (ring));
    }

    const Card& card_;
    const SchematicLayout& layout_;
    const SchematicStyle& style_;
    Drawing drawing_;
};

} // namespace

Drawing drawSchematic (const Card& card, const SchematicLayout& layout, const SchematicStyle& style)
{
    return SchematicDrawer (card, layout, style).draw();
}

} // namespace stopwright
