// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/StepControl.h"
#include "Bench/TermMark.h"
#include "Sound/Engine.h"

namespace stopwright
{

/// The listening level as a marker on a scale in dB re full scale, with the range that is safe to start in drawn on it,
/// and how far above that range it stands; the output meter under it on the same scale; and the word of the limiter. Drag,
/// wheel or arrow keys move the marker; a click beside it moves it no further than one step. Threading: message thread.
class LevelPanel : public StepControl
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
    void resized() override;

private:
    void step (int steps) override;
    juce::Rectangle<int> headingRow() const;
    juce::Rectangle<int> scaleArea() const;
    bool isAboveSafe() const;
    float xOf (double levelDb) const;
    double levelAt (float x) const;

    void paintScale (juce::Graphics& graphics);
    void paintSafeRange (juce::Graphics& graphics, float lineY);
    void paintMarker (juce::Graphics& graphics, float lineY);
    void paintMeter (juce::Graphics& graphics);
    void paintLimiter (juce::Graphics& graphics);

    Engine& engine_;
    TermMark heading_ { "Listening level", "listening level", TermMark::Style::strong };
    Telemetry telemetry_;
    double meterDb_ = -200.0;
    double peakDb_ = -200.0;
    int limiterFrames_ = 0;
    bool isDragging_ = false;
    float grabOffset_ = 0.0f;
};

} // namespace stopwright
