// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/KnobScale.h"
#include "Bench/PartCell.h"
#include "Bench/ValueEditor.h"

namespace stopwright
{

/// A number of a part as a knob: the ring round its symbol. Drag up and down, wheel on the ring or arrow keys step
/// through the chosen series, with Shift they move without steps; typing or a click on the value takes text; a
/// double-click or Home goes back to the saved value. Threading: message thread.
class KnobCell : public PartCell
{
public:
    /// `series` is read when the knob moves, so that one chooser serves all.
    KnobCell (BenchSession& session, CardKnob knob, const Series& series);

    const CardKnob& knob() const noexcept { return knob_; }

    void refresh() override;

    /// Opens the value for typing, with `start` instead of the present text when not empty: a line over what the cell lies in.
    void beginTyping (const juce::String& start = {});

    /// Takes typed text; says a sentence when it is no value. Returns whether it was taken.
    bool takeText (const juce::String& text);

    void returnToSaved();

    /// For the picture of the pointer and for tests: where the ring is.
    juce::Rectangle<int> ringArea() const { return symbolArea(); }

    void mouseDown (const juce::MouseEvent& event) override;
    void mouseDrag (const juce::MouseEvent& event) override;
    void mouseUp (const juce::MouseEvent& event) override;
    void mouseDoubleClick (const juce::MouseEvent& event) override;
    void mouseMove (const juce::MouseEvent& event) override;
    void mouseExit (const juce::MouseEvent& event) override;
    void mouseWheelMove (const juce::MouseEvent& event, const juce::MouseWheelDetails& wheel) override;
    bool keyPressed (const juce::KeyPress& key) override;
    void resized() override;
    void moved() override;

protected:
    juce::String nameText() const override;
    juce::String valueText() const override;
    juce::String nodesText() const override;
    void paintRing (juce::Graphics& graphics, juce::Rectangle<float> square) override;
    void paintSymbol (juce::Graphics& graphics, juce::Rectangle<float> square) override;

private:
    KnobScale scale() const { return { session_.card(), knob_, series_ }; }

    bool isPresent() const;

    double value() const { return session_.value (knob_); }

    double savedValue() const;
    void step (int steps, const std::string& mergeKey = {});
    void move (double amount, const std::string& mergeKey = {});
    void set (double value, const std::string& mergeKey);
    std::string wheelMergeKey();
    juce::Rectangle<int> typingArea() const;

    CardKnob knob_;
    const Series& series_;

    bool isDragging_ = false;
    float dragLastY_ = 0.0f;
    float dragRest_ = 0.0f;
    float wheelRest_ = 0.0f;
    bool isHovered_ = false;
    juce::uint32 lastWheelTime_ = 0;
    int wheelRun_ = 0;
    ValueEditor editor_ { session_ };
};

} // namespace stopwright
