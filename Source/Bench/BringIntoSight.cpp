// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BringIntoSight.h"

#include <algorithm>

namespace stopwright
{

void bringIntoSight (const juce::Component& component, juce::Rectangle<int> area)
{
    auto* const viewport = component.findParentComponentOfClass<juce::Viewport>();
    if (viewport == nullptr)
        return;
    const auto wanted = viewport->getViewedComponent()->getLocalArea (&component, area);
    const auto seen = viewport->getViewArea();
    viewport->setViewPosition (std::min (wanted.getX(), std::max (seen.getX(), wanted.getRight() - seen.getWidth())),
                               std::min (wanted.getY(), std::max (seen.getY(), wanted.getBottom() - seen.getHeight())));
}

} // namespace stopwright
