// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_graphics/juce_graphics.h>

namespace stopwright
{

/// Where a frequency and a level lie in the plot: frequency on a logarithmic axis, level on a linear one in dB.
struct HarmonicAxis
{
    static constexpr double lowestDb = -80.0;
    static constexpr double highestDb = 6.0;
    static constexpr double highestHz = 20000.0;

    juce::Rectangle<float> plot;
    double lowestHz = 50.0;

    float xOf (double frequencyHz) const;
    float yOf (double levelDb) const; ///< clamped to the plot
    double frequencyAt (float x) const;
};

} // namespace stopwright
