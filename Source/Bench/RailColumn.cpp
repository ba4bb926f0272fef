// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/RailColumn.h"

#include "Bench/Lettering.h"

namespace stopwright
{

namespace
{

constexpr float gap = 8.0f;
constexpr float switchHeight = 28.0f;
constexpr float lowestList = 220.0f; ///< beside the place: some lines of it

} // namespace

RailColumn::RailColumn (RailPanel& list, StopPlacePanel& place) : list_ (list), place_ (place)
{
    setTitle ("Rail");
    setFocusContainerType (FocusContainerType::none);
    listButton_.setTooltip (
        "The stops of the instrument, to be drawn and retired. A taller window shows both at once.");
    placeButton_.setTooltip (
        "Bus, mixing resistor and level of the stop in hand, and what has been changed. A taller window shows both at "
        "once.");
    listButton_.onClick = [this] { show (false); };
    placeButton_.onClick = [this] { show (true); };
    for (juce::Component* child :
         std::initializer_list<juce::Component*> { &listButton_, &placeButton_, &list_, &place_ })
        addAndMakeVisible (child);
}

bool RailColumn::hasRoomForBoth() const
{
    return getHeight() >= Lettering::px (lowestList) + Lettering::px (gap) + Lettering::px (StopPlacePanel::height);
}

void RailColumn::show (bool isPlace)
{
    isPlaceChosen_ = isPlace;
    resized();
}

void RailColumn::resized()
{
    const bool hasBoth = hasRoomForBoth();
    auto area = getLocalBounds();
    listButton_.setVisible (! hasBoth);
    placeButton_.setVisible (! hasBoth);
    listButton_.setToggleState (! isPlaceChosen_, juce::dontSendNotification);
    placeButton_.setToggleState (isPlaceChosen_, juce::dontSendNotification);
    list_.setVisible (hasBoth || ! isPlaceChosen_);
    place_.setVisible (hasBoth || isPlaceChosen_);
    if (hasBoth)
    {
        place_.setBounds (area.removeFromBottom (Lettering::px (StopPlacePanel::height)));
        area.removeFromBottom (Lettering::px (gap));
        list_.setBounds (area);
    }
    else
    {
        auto row = area.removeFromTop (Lettering::px (switchHeight));
        listButton_.setBounds (row.removeFromLeft (row.getWidth() / 2));
        placeButton_.setBounds (row);
        area.removeFromTop (Lettering::px (0.5f * gap));
        list_.setBounds (area);
        place_.setBounds (area);
    }
    // One whose bounds stayed the same still has to follow the lettering.
    list_.resized();
    place_.resized();
}

} // namespace stopwright
