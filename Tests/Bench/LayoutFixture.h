// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchFixture.h"
#include "Bench/Lettering.h"

#include <ostream>
#include <string>
#include <vector>

namespace stopwright
{

/// A size of the window, its lettering and colours, and how many pixels of a picture come to a point.
struct LayoutCase
{
    int width;
    int height;
    float textScale;
    float pixelScale;
    bool isNight;
};

/// As it stands in the name of a picture's file.
std::ostream& operator<< (std::ostream& stream, const LayoutCase& layout);

/// Three sizes of the window, two of its lettering.
std::vector<LayoutCase> windowCases();

/// As it stands in the name of a test.
std::string nameOf (const testing::TestParamInfo<LayoutCase>& layout);

/// The window in one of several sizes, painted, with every text that was drawn.
class LayoutFixture : public BenchFixture, public testing::WithParamInterface<LayoutCase>
{
protected:
    /// The window as the case wants it.
    BenchView& open();

    /// Paints a component, with every text that it draws listed in its coordinates.
    juce::Image paint (juce::Component& component, std::vector<Lettering::Drawn>& texts) const;

    /// Keeps a picture in the build folder's "pictures", to be looked at.
    void save (const juce::Image& image, const std::string& what) const;

    /// Whether all of it is in sight of what it is scrolled in.
    static bool isWhollySeen (const juce::Component& component);

    /// No child overlaps another or sticks out of its parent, to any depth.
    void expectNoOverlap (juce::Component& parent) const;

    /// Every text of the window is whole, in the window, and over no other of its component.
    void expectTextsHaveRoom (const std::vector<Lettering::Drawn>& texts) const;
};

} // namespace stopwright
