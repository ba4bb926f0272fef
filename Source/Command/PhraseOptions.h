// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/MidiPhrase.h"

#include <filesystem>
#include <iosfwd>
#include <string>
#include <vector>

namespace CLI
{
class App;
} // namespace CLI

namespace stopwright
{

/// What there is to play on.
struct PhraseKeyboards
{
    ChannelCompasses channels;                  ///< what a MIDI file plays
    int heldKeyboard = Keyboard::ofChannel (1); ///< what held keys are of
    Compass heldCompass;
};

/// What a command line says is played: a MIDI file, or keys that are held down. Threading: [control].
class PhraseOptions
{
public:
    /// Adds --midi, --keys, --seconds and --tail.
    void declare (CLI::App& app);

    /// Fails: CLI::ValidationError when the options are too few or too many.
    void refuseContradictions() const;

    bool isMidi() const noexcept { return keys_.empty(); }

    const std::filesystem::path& midiFile() const noexcept { return midiFile_; }

    /// Says on `err` which notes are left out, a sentence a line. Fails: Error (a MIDI file that is none, nothing to play,
    /// a key that is not there).
    Phrase phraseFor (const PhraseKeyboards& keyboards, std::ostream& err) const;

private:
    Phrase heldPhrase (const PhraseKeyboards& keyboards) const;
    Phrase midiPhrase (const PhraseKeyboards& keyboards, std::ostream& err) const;

    double tailOr (double seconds) const { return tailSeconds_ >= 0.0 ? tailSeconds_ : seconds; }

    std::filesystem::path midiFile_;
    std::vector<int> keys_;
    double seconds_ = 0.0;      ///< 0 until stated
    double tailSeconds_ = -1.0; ///< negative until stated
};

} // namespace stopwright
