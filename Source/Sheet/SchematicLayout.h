// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"
#include "Sheet/Drawing.h"
#include "Sheet/SymbolPose.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

enum class SheetItemKind
{
    tap,
    part,
    output
};

/// Where a lead of a symbol ends, and the node it goes to; the name is empty where it goes nowhere.
struct SheetTerminal
{
    DrawingPoint at;
    std::string node;
};

/// The bar of circuit common, of a supply's rail or of a tangle's node, where wires end instead of running on.
struct SheetSign
{
    DrawingPoint at;      ///< the middle of the bar
    bool isAbove = false; ///< the wire comes from below
    DrawnText name;       ///< of the rail; empty for circuit common
};

/// A tap, a part or the output on the sheet.
struct SheetItem
{
    SheetItemKind kind = SheetItemKind::part;
    std::size_t index = 0; ///< of the tap or part in the card
    std::string name;      ///< empty for the output
    DrawingPoint middle;
    SymbolPose pose;
    DrawingBox body;         ///< of the symbol without its leads
    double ringRadius = 0.0; ///< of the knob's ring about the middle; 0 for the output
    std::vector<SheetTerminal> terminals;
    std::vector<DrawnText> label;
    DrawingBox labelBox;
};

/// The wires of a node. Common, rails and nodes of a tangle may lie in several pieces, each ending on a sign.
struct SheetNode
{
    std::string name;
    std::vector<std::vector<DrawingPoint>> wires;
    std::vector<DrawingPoint> dots; ///< where three or more wires join
    std::vector<SheetSign> signs;
    std::string shortName; ///< how it is called where its whole name has no room
    DrawnText label;       ///< empty for common, and where no room was found
    DrawingPoint probe;    ///< a spot on its wire to click
};

enum class SheetDirection
{
    left,
    right,
    up,
    down
};

/// A schematic drawn from a card: where every tap, part and wire lies, in points. Signal runs from the taps at the left to
/// the output at the right; common lies at the bottom. Items are in the order taps, parts, output. Threading: [any].
struct SchematicLayout
{
    double width = 0.0;
    double height = 0.0;
    std::vector<SheetItem> items;
    std::vector<SheetNode> nodes;

    const SheetItem* findItem (SheetItemKind kind, std::size_t index) const noexcept;
    const SheetNode* findNode (std::string_view name) const noexcept;

    /// The tap or part whose ring or label the point is in: an index into `items`.
    std::optional<std::size_t> itemAt (DrawingPoint point) const noexcept;

    /// The node whose wire or sign is nearest to the point, within the tolerance: an index into `nodes`.
    std::optional<std::size_t> nodeAt (DrawingPoint point, double tolerance) const noexcept;

    /// The tap or part that an arrow key leads to from another; nothing at the edge.
    std::optional<std::size_t> neighbour (std::size_t item, SheetDirection direction) const noexcept;
};

/// Lays out any card, also one that is unfinished or that NetlistCheck refuses: what is not joined to the rest lies beneath
/// it. What is so tangled that wires cost too much to find (see LayoutEffort) has its nodes' names at all leads instead.
/// The same card gives the same layout, whatever the order of its taps and parts. Threading: [control].
SchematicLayout layOutSchematic (const Card& card);

} // namespace stopwright
