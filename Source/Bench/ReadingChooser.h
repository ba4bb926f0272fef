// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/ReadingChoices.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <functional>

namespace stopwright
{

/// The row of words that says which reading is shown; one stop of the keyboard's focus, in which the arrow keys go from
/// word to word. Threading: message thread.
class ReadingChooser : public juce::Component, public juce::SettableTooltipClient
{
public:
    static constexpr float height = 26.0f;

    ReadingChooser();

    std::function<void (ReadingKind)> onChosen;

    ReadingKind chosen() const noexcept { return chosen_; }

    /// Shows it without telling.
    void show (ReadingKind kind);

    /// The place of a word, for a test.
    juce::Rectangle<int> areaOf (ReadingKind kind) const;

    void paint (juce::Graphics& graphics) override;
    void mouseDown (const juce::MouseEvent& event) override;
    void mouseMove (const juce::MouseEvent& event) override;
    void mouseExit (const juce::MouseEvent& event) override;
    bool keyPressed (const juce::KeyPress& key) override;
    void focusGained (FocusChangeType cause) override;
    void focusLost (FocusChangeType cause) override;

private:
    void choose (ReadingKind kind);
    std::optional<ReadingKind> kindAt (juce::Point<int> place) const;

    ReadingKind chosen_ = ReadingKind::harmonics;
    std::optional<ReadingKind> pointed_;
};

} // namespace stopwright
