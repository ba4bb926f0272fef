// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/KnobCell.h"

namespace stopwright
{

/// A knob that is small enough for a line of the stop list: a small ring, then its name and its value. Threading: message
/// thread.
class RailKnob : public KnobCell
{
public:
    static constexpr float height = 34.0f; ///< at lettering scale 1

    using KnobCell::KnobCell;

protected:
    juce::Rectangle<int> symbolArea() const override;
    juce::Rectangle<int> nameArea() const override;
    juce::Rectangle<int> valueArea() const override;
};

} // namespace stopwright
