// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// A control that goes up and down by steps: with the wheel, the arrow keys, and Page up and down in leaps. It paints its
/// own focus. Threading: message thread.
class StepControl : public juce::Component, public juce::SettableTooltipClient
{
public:
    static constexpr int leapSteps = 5;

    StepControl();

    void mouseWheelMove (const juce::MouseEvent& event, const juce::MouseWheelDetails& wheel) override;
    bool keyPressed (const juce::KeyPress& key) override;
    void focusGained (FocusChangeType cause) override;
    void focusLost (FocusChangeType cause) override;
    void paintOverChildren (juce::Graphics& graphics) override;

protected:
    /// Moves by so many steps: above 0 up, below 0 down.
    virtual void step (int steps) = 0;
};

} // namespace stopwright
