// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/ElementStance.h"
#include "Sheet/SheetText.h"

#include <string>
#include <vector>

namespace stopwright
{

/// The sign of circuit common or of a rail at a lead: its wire, from the lead's end to the foot of the sign, and the
/// name that stands by it. Measured from the middle of the block.
struct BlockSign
{
    int node = 0;
    bool isAbove = false;
    std::vector<GridPoint> wire;
    std::string name;
};

/// An element with all that is drawn beside it, before it has its place. Boxes are measured from its middle.
struct SheetBlock
{
    int element = 0;
    ElementStance stance;
    std::vector<int> nodes;
    DrawingBox body;
    bool hasRing = false;
    std::vector<DrawnText> label;
    DrawingBox labelBox;
    std::vector<BlockSign> signs;

    int column = 0;
    int row = 0;
    int aside = 0;          ///< how far right of its column its middle stands
    bool joinsRail = false; ///< its leads to common that point down end on the rail at the bottom
    GridPoint at;

    /// How far it reaches from its middle, in steps.
    int left = 0;
    int right = 0;
    int top = 0;
    int bottom = 0;

    /// The same without a label at its side: what uprights in the next columns keep off.
    int clearLeft = 0;
    int clearRight = 0;
};

/// Builds the block of an element. Threading: [control].
SheetBlock
    makeBlock (const Card& card, const CardGraph& graph, int element, const ElementStance& stance, bool joinsRail);

/// The boxes of a sign's bar and of its name, measured from the middle of the block.
std::vector<DrawingBox> signBoxes (const BlockSign& sign);

/// The name by a sign; empty for circuit common.
DrawnText signText (const BlockSign& sign);

} // namespace stopwright
