// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// Playing MIDI files as the user meets it: the file chooser, the file that was played last, and the sentences about what
/// cannot be played. Threading: message thread.
class PlayerActions
{
public:
    explicit PlayerActions (BenchSession& session) : session_ (session) {}

    /// Plays a file from its beginning on the open document, its channels as `stopwright render` takes them; says a
    /// sentence when it cannot, or when notes are left out. What played goes on when it cannot. Returns whether it plays.
    bool playNow (const juce::File& file);

    void askAndPlay();

    /// Stops what plays; else plays the last file again, or asks for one when there is none.
    void playOrStop();

    /// Keys that others hold stay down.
    void stop() { deck().stop(); }

    bool isPlaying() { return deck().isPlaying(); }

    /// What was played last; no file before the first.
    const juce::File& lastFile() const noexcept { return lastFile_; }

    PhraseDeck& deck() noexcept { return session_.processor().deck(); }

private:
    void play (const juce::File& file);

    BenchSession& session_;
    juce::File lastFile_;
    bool hasSaid_ = false; ///< whether a sentence of ours may be up
    std::unique_ptr<juce::FileChooser> chooser_;
};

} // namespace stopwright
