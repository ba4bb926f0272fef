// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_graphics/juce_graphics.h>

#include <vector>

namespace stopwright
{

/// Where a window goes that was somewhere the last time, when the screens may be others: onto the screen that has most of
/// it (the first, where none has any), no larger than that screen, and wholly on it. It is never smaller than `smallest`;
/// on a screen that is smaller still, its top left corner is to be seen. Threading: [any].
juce::Rectangle<int> placeOnScreens (juce::Rectangle<int> wanted,
                                     const std::vector<juce::Rectangle<int>>& screens,
                                     juce::Point<int> smallest);

} // namespace stopwright
