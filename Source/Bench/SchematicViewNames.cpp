// SPDX-License-Identifier: GPL-3.0-or-later
//
// The names of the nodes in SchematicView: told when the pointer is on a wire, and changed.
#include "Bench/SchematicView.h"

#include "Bench/BringIntoSight.h"
#include "Bench/Lettering.h"
#include "Bench/WideText.h"
#include "Circuit/FindingWords.h"
#include "Organ/CardEdit.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

constexpr float editorWidth = 130.0f;
constexpr float editorHeight = 24.0f;

} // namespace

juce::String SchematicView::getTooltip()
{
    if (hoveredNode_.empty())
        return {};
    const auto name = fromUtf8 (capitalised (nodeWords (hoveredNode_)));
    if (hoveredNode_ == commonNode)
        return name + ": every voltage is measured from it.";
    return name + ": a click puts the probe on it, a double-click renames it.";
}

std::string SchematicView::nodeInHand() const
{
    return probe_.empty() ? session_.card().output : probe_;
}

void SchematicView::beginNodeRenaming()
{
    const auto name = nodeInHand();
    const auto* const node = layout_.findNode (name);
    if (node == nullptr)
        return;
    const auto place = node->label.text.empty() ? node->probe : node->label.at;
    beginNodeRenaming (name, toView (place).roundToInt());
}

void SchematicView::beginNodeRenaming (const std::string& node, juce::Point<int> place)
{
    if (node == commonNode)
    {
        session_.attempt ([&] { renameNode (session_.card(), node, {}); }); // says why not
        return;
    }
    const auto area = juce::Rectangle<int> (Lettering::px (editorWidth), Lettering::px (editorHeight))
                          .withCentre (place)
                          .constrainedWithin (getLocalBounds());
    bringIntoSight (*this, area);
    nameEditor_.open (*this, area,
                      { "Name of " + fromUtf8 (nodeWords (node)), fromUtf8 (node), true,
                        [this, node] (const juce::String& typed) { return takeNodeName (node, typed); },
                        [this] { repaint(); }, wayBack() });
    repaint();
}

/// Gives the keyboard back to what has it now, also to a part that is drawn anew meanwhile.
std::function<void()> SchematicView::wayBack()
{
    const bool isOnPart = std::ranges::any_of (cells_, [] (const auto& cell) { return cell->hasKeyboardFocus (true); });
    return [this, before = SafePointer<Component> (getCurrentlyFocusedComponent()),
            part = isOnPart ? selection_ : std::nullopt]
    {
        if (before != nullptr && before->isShowing())
            before->grabKeyboardFocus();
        else if (part)
            takeHold (*part);
        else
            giveAwayKeyboardFocus(); // the window sees to it
    };
}

bool SchematicView::takeNodeName (const std::string& node, const juce::String& typed)
{
    const auto name = typed.trim().toStdString();
    if (name == node)
        return true;
    return session_.attempt (
        [&]
        {
            auto renamed = renameNode (session_.card(), node, name);
            session_.editCard ("node " + node + " renamed " + name, [&] (Card& card) { card = std::move (renamed); });
        });
}

} // namespace stopwright
