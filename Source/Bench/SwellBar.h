// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/Engine.h"

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// The swell shoe as a bar that is filled as far as the shoe is open; follows expression from MIDI. Drag, click, wheel
/// or arrow keys move it. Threading: message thread.
class SwellBar : public juce::Component, public juce::SettableTooltipClient
{
public:
    static constexpr float width = 210.0f; ///< at lettering scale 1

    explicit SwellBar (Engine& engine);

    /// Shows where the shoe is. Call it for every frame.
    void refresh();

    void paint (juce::Graphics& graphics) override;
    void mouseDown (const juce::MouseEvent& event) override;
    void mouseDrag (const juce::MouseEvent& event) override;
    void mouseWheelMove (const juce::MouseEvent& event, const juce::MouseWheelDetails& wheel) override;
    bool keyPressed (const juce::KeyPress& key) override;
    void focusGained (FocusChangeType cause) override;
    void focusLost (FocusChangeType cause) override;

private:
    void move (double position);
    juce::Rectangle<int> barArea() const;

    Engine& engine_;
    double shown_ = -1.0;
};

} // namespace stopwright
