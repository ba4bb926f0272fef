// SPDX-License-Identifier: GPL-3.0-or-later
//
// What SchematicView does with mouse and keys: leads, probe, and the walk from part to part.
#include "Bench/SchematicView.h"

#include "Bench/GlossaryTerms.h"
#include "Bench/Lettering.h"
#include "Bench/PartWords.h"
#include "Organ/CardEdit.h"

#include <array>
#include <utility>

namespace stopwright
{

void SchematicView::addHandles()
{
    handles_.clear();
    const auto* const item = selection_ ? itemOf (*selection_) : nullptr;
    if (item == nullptr)
        return;
    for (std::size_t lead = 0; lead < item->terminals.size(); ++lead)
    {
        const auto name = selection_->isTap ? juce::String ("tap")
                                            : PartWords::leadName (session_.card().parts[item->index].value, lead);
        auto handle = std::make_unique<LeadHandle> (lead, name);
        handle->onDrop = [this] (const LeadHandle& dropped, juce::Point<float> place) { dropLead (dropped, place); };
        setTerm (*handle, "node");
        const int side = Lettering::px (LeadHandle::side);
        handle->setBounds (
            juce::Rectangle<int> (side, side).withCentre (toView (item->terminals[lead].at).roundToInt()));
        addAndMakeVisible (*handle);
        handles_.push_back (std::move (handle));
    }
}

void SchematicView::dropLead (const LeadHandle& handle, juce::Point<float> place)
{
    if (! selection_)
        return;
    const auto node = layout_.nodeAt (fromView (place), wireTolerance);
    const auto name = node ? layout_.nodes[*node].name : proposedNodeName (session_.card());
    const auto selection = *selection_;
    const auto lead = handle.lead();
    // The handle goes when the sheet is drawn anew, and this is one of its own callbacks.
    juce::MessageManager::callAsync (
        [safe = juce::Component::SafePointer<SchematicView> (this), selection, lead, name]
        {
            if (safe == nullptr)
                return;
            safe->session_.attempt (
                [&]
                {
                    safe->session_.editCard (selection.name + " soldered to " + name,
                                             [&] (Card& card)
                                             {
                                                 card = selection.isTap
                                                            ? rewireTap (std::move (card), selection.name, name)
                                                            : rewireLead (std::move (card), selection.name, lead, name);
                                             });
                });
        });
}

void SchematicView::removeSelection()
{
    if (! selection_)
        return;
    const auto gone = *selection_;
    session_.attempt (
        [&]
        {
            session_.editCard (gone.name + " removed",
                               [&] (Card& card) {
                                   card = gone.isTap ? removeTap (std::move (card), gone.name)
                                                     : removePart (std::move (card), gone.name);
                               });
        });
}

void SchematicView::setProbe (const std::string& node)
{
    if (probe_ == node)
        return;
    probe_ = node;
    redraw();
    if (onProbe)
        onProbe();
}

/// The name of the node whose wire is there; empty for none.
std::string SchematicView::nodeAt (juce::Point<float> place) const
{
    const auto node = layout_.nodeAt (fromView (place), wireTolerance);
    return node ? layout_.nodes[*node].name : std::string();
}

void SchematicView::mouseDown (const juce::MouseEvent& event)
{
    nameEditor_.close();
    if (const auto node = nodeAt (event.position); ! node.empty())
    {
        if (node != commonNode) // volts are measured from there, so that there are none
            setProbe (node);
        return;
    }
    select ({});
    if (hasKeyboardFocus (true))
        giveAwayKeyboardFocus(); // a part that is not in hand must not be turned by the arrow keys
}

void SchematicView::mouseDoubleClick (const juce::MouseEvent& event)
{
    if (const auto node = nodeAt (event.position); ! node.empty())
        beginNodeRenaming (node, event.getPosition());
}

void SchematicView::mouseMove (const juce::MouseEvent& event)
{
    hover (nodeAt (event.position));
}

void SchematicView::mouseExit (const juce::MouseEvent&)
{
    hover ({});
}

void SchematicView::hover (const std::string& node)
{
    hoveredNode_ = node;
    setTerm (*this, node.empty() ? "" : node == commonNode ? "common" : "node");
    setMouseCursor (node.empty() ? juce::MouseCursor::NormalCursor : juce::MouseCursor::CrosshairCursor);
}

void SchematicView::mouseWheelMove (const juce::MouseEvent& event, const juce::MouseWheelDetails& wheel)
{
    PartCell::noteScroll (event);
    Component::mouseWheelMove (event, wheel);
}

bool SchematicView::walk (SheetDirection direction)
{
    const auto* const item = itemOf (*selection_);
    if (item == nullptr)
        return false;
    if (const auto next = layout_.neighbour (static_cast<std::size_t> (item - layout_.items.data()), direction))
        takeHold (selectionOf (layout_.items[*next]));
    return true;
}

bool SchematicView::keyPressed (const juce::KeyPress& key)
{
    if (! selection_)
        return false;
    if (key == juce::KeyPress::deleteKey)
    {
        removeSelection();
        return true;
    }
    if (key == juce::KeyPress::F2Key)
    {
        if (onRename)
            onRename();
        return true;
    }
    if (key == juce::KeyPress::F3Key && onDesk)
    {
        onDesk();
        return true;
    }
    if (! key.getModifiers().isCommandDown())
        return false;
    // Not static: the codes are numbers of the window system, set while the program starts.
    const std::array arrows { std::pair { juce::KeyPress::leftKey, SheetDirection::left },
                              std::pair { juce::KeyPress::rightKey, SheetDirection::right },
                              std::pair { juce::KeyPress::upKey, SheetDirection::up },
                              std::pair { juce::KeyPress::downKey, SheetDirection::down } };
    for (const auto& [code, direction] : arrows)
        if (key.getKeyCode() == code)
            return walk (direction);
    return false;
}

} // namespace stopwright
