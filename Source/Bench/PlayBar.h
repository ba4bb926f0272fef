// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/KeyHands.h"
#include "Bench/KeyboardStrip.h"
#include "Bench/TypingKeys.h"

namespace stopwright
{

/// The keyboard with its controls over it: Hold, all keys off, and which octave the letters play.
/// Threading: message thread.
class PlayBar : public juce::Component
{
public:
    static constexpr float rowHeight = 34.0f; ///< of the controls, at lettering scale 1

    PlayBar (BenchSession& session, KeyHands& hands, TypingKeys& typing);

    KeyboardStrip& keyboard() noexcept { return keyboard_; }

    /// Brings keys and texts up to date. Call it for every frame.
    void refresh();

    void setHold (bool isOn);

    /// Lets every key go, wherever it is held from.
    void allOff();

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    juce::String octaveText() const;

    KeyHands& hands_;
    TypingKeys& typing_;
    juce::ToggleButton hold_ { "Hold" };
    juce::TextButton allOff_ { "All keys off" };
    KeyboardStrip keyboard_;
    juce::String shownOctave_;
};

} // namespace stopwright
