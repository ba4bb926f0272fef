// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// Scrolls what `component` stands in, as little as it takes, until `area` of the component is seen, or where there is no
/// room for all of it its upper left. Nothing happens where nothing scrolls. Threading: message thread.
void bringIntoSight (const juce::Component& component, juce::Rectangle<int> area);

} // namespace stopwright
