// SPDX-License-Identifier: GPL-3.0-or-later
//
// What SheetPanel adds to the card.
#include "Bench/SheetPanel.h"

#include "Bench/WideText.h"
#include "Circuit/FindingWords.h"
#include "Organ/CardEdit.h"
#include "Organ/UsualParts.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

void SheetPanel::addPart (const PartValue& value)
{
    const auto name = proposedPartName (session_.card(), value);
    const auto here = view_.nodeInHand();
    std::vector<std::string> nodes;
    if (leadCount (value) == 2)
        nodes = { here, "0" };
    else if (std::holds_alternative<OpAmp> (value))
        nodes = { here, "", "" };
    else
        nodes = { here, here, "0" };
    const bool isAdded = session_.attempt (
        [&]
        {
            session_.editCard (name + " added",
                               [&] (Card& card)
                               {
                                   // An amplifier begins as a follower: what it puts out goes to its minus input.
                                   if (nodes.size() == 3 && nodes[1].empty())
                                       nodes[1] = nodes[2] = proposedNodeName (card);
                                   card = stopwright::addPart (std::move (card), value, nodes, name);
                               });
        });
    if (isAdded)
        view_.takeHold ({ false, name });
}

void SheetPanel::addTapFrom (const std::string& keyedBus)
{
    const auto& instrument = session_.document().instrument;
    if (! instrument)
        return;
    const auto bus = std::ranges::find (instrument->keyedBuses, keyedBus, &KeyedBus::name);
    if (bus == instrument->keyedBuses.end())
        return;
    const auto name = proposedTapName (session_.card(), keyedBus);
    const bool isAdded = session_.attempt (
        [&]
        {
            session_.editCard (name + " tapped",
                               [&] (Card& card)
                               {
                                   const auto node = view_.probe().empty() ? proposedNodeName (card) : view_.probe();
                                   card = addTap (std::move (card), *bus, node, name);
                               });
        });
    if (isAdded)
        view_.takeHold ({ true, name });
}

void SheetPanel::showAddMenu()
{
    juce::PopupMenu menu;
    const auto there = view_.nodeInHand();
    menu.addSectionHeader ("Between node " + fromUtf8 (there.empty() ? "?" : there) + " and common");
    for (const auto& value : usualParts())
        menu.addItem (fromUtf8 (capitalised (std::string (kindName (value)))), [this, value] { addPart (value); });
    if (const auto& instrument = session_.document().instrument)
    {
        juce::PopupMenu buses;
        for (const auto& bus : instrument->keyedBuses)
            buses.addItem (fromUtf8 (bus.name), [this, name = bus.name] { addTapFrom (name); });
        menu.addSubMenu ("Tap from a keyed bus", buses, ! instrument->keyedBuses.empty());
    }
    menu.showMenuAsync (
        juce::PopupMenu::Options().withTargetComponent (add_).withParentComponent (getTopLevelComponent()));
}

} // namespace stopwright
