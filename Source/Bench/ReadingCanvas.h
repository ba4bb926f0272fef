// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/ReadingPicture.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <functional>

namespace stopwright
{

/// The picture of a reading. The numbers of a spot are told under the pointer or, with the keyboard, by the arrow keys,
/// Home and End. In place of a picture it can show a sentence. Threading: message thread.
class ReadingCanvas : public juce::Component, public juce::SettableTooltipClient
{
public:
    ReadingCanvas();

    /// Told when another spot is chosen, or none.
    std::function<void()> onSpot;

    /// The chosen spot stays where the new picture has as many.
    void show (ReadingPicture picture);
    void showSentence (const juce::String& sentence);

    const ReadingPicture& picture() const noexcept { return picture_; }

    /// How often a picture was shown: two that look the same are told apart by it.
    int shownCount() const noexcept { return shownCount_; }

    const juce::String& sentence() const noexcept { return sentence_; }

    /// The spot by its place in the list; anything beyond it chooses none.
    void choose (int spot);

    int chosen() const noexcept { return chosen_; }

    void paint (juce::Graphics& graphics) override;
    void mouseMove (const juce::MouseEvent& event) override;
    void mouseExit (const juce::MouseEvent& event) override;
    bool keyPressed (const juce::KeyPress& key) override;
    void focusGained (FocusChangeType cause) override;
    void focusLost (FocusChangeType cause) override;

private:
    void paintChosen (juce::Graphics& graphics);
    void paintSentence (juce::Graphics& graphics);

    ReadingPicture picture_;
    juce::String sentence_;
    int chosen_ = -1;
    int shownCount_ = 0;
};

} // namespace stopwright
