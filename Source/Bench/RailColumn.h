// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/RailPanel.h"
#include "Bench/StopPlacePanel.h"

namespace stopwright
{

/// The list of stops over the place of the one in hand; where there is no height for both, one of them at a time, with a
/// switch over it. Threading: message thread.
class RailColumn : public juce::Component
{
public:
    RailColumn (RailPanel& list, StopPlacePanel& place);

    /// Whether there is height for both at once.
    bool hasRoomForBoth() const;

    juce::TextButton& listButton() noexcept { return listButton_; }

    juce::TextButton& placeButton() noexcept { return placeButton_; }

    void resized() override;

private:
    void show (bool isPlace);

    RailPanel& list_;
    StopPlacePanel& place_;
    juce::TextButton listButton_ { "All stops" };
    juce::TextButton placeButton_ { "On the rail" };
    bool isPlaceChosen_ = false; ///< where there is height for one alone
};

} // namespace stopwright
