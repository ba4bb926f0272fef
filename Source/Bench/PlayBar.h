// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/KeyHands.h"
#include "Bench/KeyboardStrip.h"
#include "Bench/PhraseBar.h"
#include "Bench/SwellBar.h"
#include "Bench/TypingKeys.h"

namespace stopwright
{

/// The keyboard with its controls over it: Hold, all keys off, the phrase player, and of an instrument the division that is
/// played and the swell shoe; and which octave the letters play. Threading: message thread.
class PlayBar : public juce::Component, private BenchSession::Listener
{
public:
    static constexpr float rowHeight = 34.0f; ///< of the controls, at lettering scale 1

    PlayBar (BenchSession& session, KeyHands& hands, TypingKeys& typing, PlayerActions& player);
    ~PlayBar() override;

    KeyboardStrip& keyboard() noexcept { return keyboard_; }

    /// Brings keys and texts up to date. Call it for every frame.
    void refresh();

    void setHold (bool isOn);

    /// Without the keyboard the bar is as tall as its controls; letters and MIDI play on.
    void showKeyboard (bool isShown) { keyboard_.setVisible (isShown); }

    /// The keyboard focus goes to the keys, or where they are left out to the first control.
    void takeFocus();

    /// Moves the keyboard and the typing keys to a division of the instrument.
    void playDivision (int division);

    SwellBar& swell() noexcept { return swell_; }

    PhraseBar& phrase() noexcept { return phrase_; }

    /// Lets every key go, wherever it is held from, and stops the phrase.
    void allOff();

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    void sessionChanged (BenchSession::Change change) override;
    void fillDivisions();
    juce::String octaveText() const;

    BenchSession& session_;
    KeyHands& hands_;
    TypingKeys& typing_;
    PlayerActions& player_;
    juce::ToggleButton hold_ { "Hold" };
    juce::TextButton allOff_ { "All keys off" };
    juce::ComboBox divisions_;
    PhraseBar phrase_;
    SwellBar swell_;
    KeyboardStrip keyboard_;
    juce::String shownOctave_;
};

} // namespace stopwright
