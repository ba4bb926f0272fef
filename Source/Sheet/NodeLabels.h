// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/SchematicLayout.h"

namespace stopwright
{

/// Writes the names of the signal nodes beside their wires, where they meet nothing else, and sets the spots where the
/// nodes are clicked. Where a name has no room it is shortened; where that has none either, it stays off. Threading: [control].
void labelNodes (SchematicLayout& layout);

/// All boxes of a layout that no text may meet: symbols with their rings, labels, signs and wires.
std::vector<DrawingBox> takenBoxes (const SchematicLayout& layout);

} // namespace stopwright
