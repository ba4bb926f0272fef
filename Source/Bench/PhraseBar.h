// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/KeyHands.h"
#include "Bench/PlayerActions.h"

#include <array>

namespace stopwright
{

/// The controls of the phrase player: the menu of what to play, and a click each for the demonstration phrase, a scale and
/// a full chord; while something plays, in their place, stop, loop and how far it is. Threading: message thread.
class PhraseBar : public juce::Component
{
public:
    /// Scale and chord go to the division that the hands are on.
    PhraseBar (PlayerActions& player, KeyHands& hands);

    /// Follows the player. Call it for every frame.
    void refresh();

    /// How wide it wants to be as it stands; told when that changes.
    int widthWanted() const;
    std::function<void()> onWidthChange;

    /// Opens the menu of what can be played, at the button given.
    std::function<void (juce::Component&)> onMenu;

    /// "0:12 of 0:40"; empty while nothing plays.
    const juce::String& positionText() const noexcept { return position_; }

    juce::TextButton& button() noexcept { return button_; }

    juce::TextButton& demonstration() noexcept { return demonstration_; }

    juce::TextButton& scale() noexcept { return scale_; }

    juce::TextButton& chord() noexcept { return chord_; }

    juce::ToggleButton& loop() noexcept { return loop_; }

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    void showPlaying (bool isPlaying);
    static int widthOf (const juce::TextButton& button);
    static int loopWidth();
    int positionWidth() const;

    PlayerActions& player_;
    juce::TextButton button_ { "Play" };
    juce::TextButton demonstration_ { "Demo" };
    juce::TextButton scale_ { "Scale" };
    juce::TextButton chord_ { "Chord" };
    const std::array<juce::TextButton*, 3> pieces_ { &demonstration_, &scale_, &chord_ };
    juce::ToggleButton loop_ { "Loop" };
    juce::String position_;
    bool isPlaying_ = false;
};

} // namespace stopwright
