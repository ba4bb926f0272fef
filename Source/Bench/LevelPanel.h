// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/Engine.h"

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// The listening level as a marker on a scale in dB re full scale, with the range that is safe to start in drawn on it;
/// the output meter under it on the same scale; and the word of the limiter. Drag, wheel or arrow keys move the marker;
/// a click beside it moves it no further than one step. Threading: message thread.
class LevelPanel : public juce::Component, public juce::SettableTooltipClient
{
public:
    static constexpr double lowestDb = -80.0;
    static constexpr double highestDb = 0.0;
    static constexpr double safeBelowDb = Engine::startListeningLevelDb;

    explicit LevelPanel (Engine& engine);

    /// Shows what the audio thread last reported.
    void show (const Telemetry& telemetry);

    /// What one C4 sounds at the marker of: "Krummhorn 8", a stop of an instrument or a card.
    void setReference (const juce::String& name, bool isStop);

    void setLevelDb (double levelDb);

    juce::String limiterText() const;

    void paint (juce::Graphics& graphics) override;
    void mouseDown (const juce::MouseEvent& event) override;
    void mouseDrag (const juce::MouseEvent& event) override;
    void mouseDoubleClick (const juce::MouseEvent& event) override;
    void mouseWheelMove (const juce::MouseEvent& event, const juce::MouseWheelDetails& wheel) override;
    bool keyPressed (const juce::KeyPress& key) override;
    void focusGained (FocusChangeType cause) override;
    void focusLost (FocusChangeType cause) override;

private:
    juce::Rectangle<int> scaleArea() const;
    float xOf (double levelDb) const;
    double levelAt (float x) const;

    void paintScale (juce::Graphics& graphics);
    void paintMeter (juce::Graphics& graphics);
    void paintLimiter (juce::Graphics& graphics);

    Engine& engine_;
    Telemetry telemetry_;
    double meterDb_ = -200.0;
    double peakDb_ = -200.0;
    int limiterFrames_ = 0;
    bool isDragging_ = false;
    float grabOffset_ = 0.0f;
};

} // namespace stopwright
