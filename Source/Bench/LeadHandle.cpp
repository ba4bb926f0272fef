// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/LeadHandle.h"

#include "Bench/BenchLook.h"

#include <utility>

namespace stopwright
{

LeadHandle::LeadHandle (std::size_t lead, const juce::String& name) : lead_ (lead)
{
    setTitle ("Lead " + name);
    setTooltip ("Lead \"" + name
                + "\": drag it to another wire to solder it there, or to an empty place to give it a node of its own.");
    setMouseCursor (juce::MouseCursor::DraggingHandCursor);
    setMouseClickGrabsKeyboardFocus (false); // it stays with the part whose lead this is
}

void LeadHandle::mouseDrag (const juce::MouseEvent& event)
{
    if (event.getDistanceFromDragStart() < 4 && ! draggedTo_)
        return;
    draggedTo_ = event.getEventRelativeTo (getParentComponent()).position;
    getParentComponent()->repaint();
}

void LeadHandle::mouseUp (const juce::MouseEvent&)
{
    const auto place = std::exchange (draggedTo_, {});
    getParentComponent()->repaint();
    if (place && onDrop)
        onDrop (*this, *place);
}

void LeadHandle::paint (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const auto square = getLocalBounds().toFloat().reduced (1.5f);
    graphics.setColour (colours.sheet);
    graphics.fillRect (square);
    graphics.setColour (isMouseOverOrDragging() ? colours.ink : colours.result);
    graphics.drawRect (square, 2.0f);
}

} // namespace stopwright
