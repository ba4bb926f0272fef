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

    /// The open line for typing among the children of a component, or nullptr.
    static juce::TextEditor* editorIn (juce::Component& parent)
    {
        for (auto* child : parent.getChildren())
            if (auto* const editor = dynamic_cast<juce::TextEditor*> (child))
                return editor;
        return nullptr;
    }

    /// A key, as the window gets it.
    void press (int code, int milliseconds = 20)
    {
        view_->getPeer()->handleKeyPress (juce::KeyPress (code));
        runMessages (milliseconds);
    }

    /// The card in hand as it would be saved.
    std::string text() const { return cardText (session_.card()); }
};

} // namespace stopwright
