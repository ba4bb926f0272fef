// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <functional>

namespace stopwright
{

/// Playing as the user meets it: MIDI files with their chooser, the demonstration phrase, a scale and a full chord for the
/// division in hand, what was played last, and the sentences about what cannot be played. Threading: message thread.
class PlayerActions
{
public:
    explicit PlayerActions (BenchSession& session) : session_ (session) {}

    /// Plays a file from its beginning on the open document, its channels as `stopwright render` takes them; says a
    /// sentence when it cannot, or when notes are left out. What played goes on when it cannot. Returns whether it plays.
    bool playNow (const juce::File& file);

    void askAndPlay();

    /// The phrase that comes with the program. Returns whether it plays.
    bool playDemonstration();

    /// Every key of a division's compass one after the other, and ten keys of it together (see PracticePhrases); of a card
    /// alone, over its own compass. Says a sentence when nothing is open. Returns whether it plays.
    bool playScale (int division);
    bool playFullChord (int division);

    /// Stops what plays; else plays the last piece again, or asks for a file when there was none.
    void playOrStop();

    /// Keys that others hold stay down.
    void stop() { deck().stop(); }

    bool isPlaying() { return deck().isPlaying(); }

    /// The MIDI file that was played last; no file before the first.
    const juce::File& lastFile() const noexcept { return lastFile_; }

    PhraseDeck& deck() noexcept { return session_.processor().deck(); }

private:
    using Practice = Phrase (*) (int lowestKey, int highestKey, int keyboard);

    void play (const juce::File& file);
    bool playPractice (int division, Practice make);
    int keyboardOf (int division) const;
    void requireDocument() const;
    bool attempt (const std::function<void()>& action, const std::string& remedy);

    BenchSession& session_;
    juce::File lastFile_;
    std::function<bool()> playAgain_; ///< empty before the first piece
    bool hasSaid_ = false;            ///< whether a sentence of ours may be up
    std::unique_ptr<juce::FileChooser> chooser_;
};

} // namespace stopwright
