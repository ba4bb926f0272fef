// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// The lamp of all stages together, with its word; a click puts all lamps out. Threading: message thread.
class ClipButton : public juce::Button
{
public:
    ClipButton() : Button ("Clipping lamps") {}

    /// How many lamps are lit.
    void setLit (int count);

    /// A circle, or when lit a filled triangle with a bar, in `area`.
    static void
        drawLamp (juce::Graphics& graphics, const juce::Component& owner, juce::Rectangle<float> area, bool isLit);

private:
    void paintButton (juce::Graphics& graphics, bool isHighlighted, bool isDown) override;

    bool isLit_ = false;
};

} // namespace stopwright
