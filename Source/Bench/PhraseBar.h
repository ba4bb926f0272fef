// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/PlayerActions.h"

namespace stopwright
{

/// The controls of the phrase player: what to play; while it plays stop, loop and how far it is. Threading: message thread.
class PhraseBar : public juce::Component
{
public:
    explicit PhraseBar (PlayerActions& player);

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

    juce::ToggleButton& loop() noexcept { return loop_; }

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    int buttonWidth() const;
    static int loopWidth();
    int positionWidth() const;

    PlayerActions& player_;
    juce::TextButton button_ { "Play" };
    juce::ToggleButton loop_ { "Loop" };
    juce::String position_;
    bool isPlaying_ = false;
};

} // namespace stopwright
