// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/StepControl.h"
#include "Sound/Engine.h"

namespace stopwright
{

/// The swell shoe as a bar that is filled as far as the shoe is open; follows expression from MIDI. Drag, click, wheel
/// or arrow keys move it. Threading: message thread.
class SwellBar : public StepControl
{
public:
    static constexpr float width = 210.0f; ///< at lettering scale 1

    explicit SwellBar (Engine& engine);

    /// Shows where the shoe is. Call it for every frame.
    void refresh();

    void paint (juce::Graphics& graphics) override;
    void mouseDown (const juce::MouseEvent& event) override;
    void mouseDrag (const juce::MouseEvent& event) override;

private:
    void step (int steps) override;
    void move (double position);
    juce::Rectangle<int> barArea() const;

    Engine& engine_;
    double shown_ = -1.0;
};

} // namespace stopwright
