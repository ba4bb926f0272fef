// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/WindowPlace.h"

#include <algorithm>

namespace stopwright
{

namespace
{

/// In 64 bits: an area of a state that was edited by hand may be beyond 32.
long long sharedArea (juce::Rectangle<int> one, juce::Rectangle<int> other)
{
    const auto shared = one.getIntersection (other);
    return static_cast<long long> (shared.getWidth()) * shared.getHeight();
}

/// A beginning for a stretch of `length` that lies within one from `from`, so many long.
int within (int begin, int length, int from, int room)
{
    return std::clamp (begin, from, std::max (from, from + room - length));
}

} // namespace

juce::Rectangle<int> placeOnScreens (juce::Rectangle<int> wanted,
                                     const std::vector<juce::Rectangle<int>>& screens,
                                     juce::Point<int> smallest)
{
    if (screens.empty())
        return wanted;
    const auto screen =
        *std::ranges::max_element (screens, {}, [&] (const auto& each) { return sharedArea (each, wanted); });
    const int width = std::max (std::min (wanted.getWidth(), screen.getWidth()), smallest.x);
    const int height = std::max (std::min (wanted.getHeight(), screen.getHeight()), smallest.y);
    return { within (wanted.getX(), width, screen.getX(), screen.getWidth()),
             within (wanted.getY(), height, screen.getY(), screen.getHeight()), width, height };
}

} // namespace stopwright
