// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/RailKnob.h"

#include "Bench/Lettering.h"

namespace stopwright
{

namespace
{

constexpr float ringWidth = 34.0f; ///< as the signs of the lines above
constexpr float nameWidth = 46.0f;
constexpr float gap = 4.0f;

} // namespace

juce::Rectangle<int> RailKnob::symbolArea() const
{
    const int side = Lettering::px (ringWidth - 2.0f);
    return getLocalBounds().removeFromLeft (Lettering::px (ringWidth)).withSizeKeepingCentre (side, side);
}

juce::Rectangle<int> RailKnob::nameArea() const
{
    return getLocalBounds().withTrimmedLeft (Lettering::px (ringWidth + gap)).withWidth (Lettering::px (nameWidth));
}

juce::Rectangle<int> RailKnob::valueArea() const
{
    return getLocalBounds().withLeft (nameArea().getRight() + Lettering::px (gap)).reduced (0, Lettering::px (gap));
}

} // namespace stopwright
