// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/SchematicLayout.h"
#include "Sheet/SchematicSymbol.h"

#include <optional>
#include <string>

namespace stopwright
{

/// How a schematic is drawn. Marks name what is in hand.
struct SchematicStyle
{
    ResistorSign resistor = ResistorSign::rectangle;
    std::optional<std::size_t> markedItem; ///< of the layout: drawn in the ink of a result, with its ring
    std::string markedNode;                ///< its wires likewise
    bool showsNodeNames = true;
};

/// The schematic of a card as a picture. `layout` is the card's; values may have changed since. Threading: [control].
Drawing drawSchematic (const Card& card, const SchematicLayout& layout, const SchematicStyle& style = {});

} // namespace stopwright
