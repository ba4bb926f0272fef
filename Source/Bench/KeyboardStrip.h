// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"
#include "Bench/KeyHands.h"
#include "Bench/TypingKeys.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <bitset>

namespace stopwright
{

/// The keys of the division in hand, drawn as an outline, with their names and the computer keys that play them; played
/// with the mouse, or with left, right and Space when it has the keyboard. Threading: message thread.
class KeyboardStrip : public juce::Component, public juce::SettableTooltipClient, private BenchSession::Listener
{
public:
    KeyboardStrip (BenchSession& session, KeyHands& hands, TypingKeys& typing);
    ~KeyboardStrip() override;

    /// Shows the keyboard of the division that the hands are on.
    void showDivision();

    /// Repaints when a key went down or up anywhere. Call it for every frame.
    void refresh();

    /// Where a key lies, for playing and for tests.
    juce::Rectangle<float> areaOf (int key) const;

    /// The key at a place, or -1.
    int keyAt (juce::Point<float> place) const;

    void paint (juce::Graphics& graphics) override;
    void mouseDown (const juce::MouseEvent& event) override;
    void mouseDrag (const juce::MouseEvent& event) override;
    void mouseUp (const juce::MouseEvent& event) override;
    bool keyPressed (const juce::KeyPress& key) override;
    bool keyStateChanged (bool isKeyDown) override;
    void focusGained (FocusChangeType cause) override;
    void focusLost (FocusChangeType cause) override;

private:
    void sessionChanged (BenchSession::Change change) override;
    bool isDown (int key) const;
    void holdWithMouse (int key);

    int lowest() const { return session_.document().lowestKey (hands_.division()); }

    int highest() const { return session_.document().highestKey (hands_.division()); }

    float naturalWidth() const;

    void paintKey (juce::Graphics& graphics, int key);
    void paintKeyText (juce::Graphics& graphics, int key, juce::Rectangle<float> area);

    BenchSession& session_;
    KeyHands& hands_;
    TypingKeys& typing_;
    int mouseKey_ = -1;
    int focusKey_ = 60;
    int spaceKey_ = -1;
    std::bitset<128> shown_;
    int shownBase_ = -1;
    unsigned midiChannels_ = 0; ///< that play the division, a bit each, and the bit of its own keyboard
};

} // namespace stopwright
