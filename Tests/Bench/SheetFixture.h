// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchFixture.h"
#include "Organ/CardDocument.h"

#include <string>

namespace stopwright
{

/// The bench with the sheet at hand.
class SheetFixture : public BenchFixture
{
protected:
    SheetPanel& sheet() { return view_->sheet(); }

    SchematicView& schematic() { return sheet().schematic(); }

    /// Somewhere on a wire of the node, in the schematic.
    juce::Point<int> onWire (const std::string& node)
    {
        return schematic().toView (schematic().layout().findNode (node)->probe).roundToInt();
    }

    /// The card in hand as it would be saved.
    std::string text() const { return cardText (session_.card()); }
};

} // namespace stopwright
