// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/PhraseOptions.h"

#include "Command/MidiReading.h"
#include "Command/Options.h"
#include "Units/Error.h"
#include "Units/Pitch.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <algorithm>
#include <ostream>
#include <utility>

namespace stopwright
{

namespace
{

constexpr double longestSeconds = 3600.0;
constexpr double longestTailSeconds = 60.0;
constexpr double midiTailSeconds = 0.5;

} // namespace

void PhraseOptions::declare (CLI::App& app)
{
    app.add_option ("--midi", midiFile_, "A standard MIDI file, all channels (format 0 or 1)")->type_name ("FILE");
    addKeys (app, "--keys", keys_, "Keys to hold down together, as in \"C4 E4\"");

    constexpr QuantityRange durations { Quantity::time, 1e-3, longestSeconds, "s" };
    addQuantity (app, "--seconds", durations, seconds_, "How long the keys are held")->type_name ("S");
    constexpr QuantityRange tails { Quantity::time, 0.0, longestTailSeconds, "s" };
    addQuantity (app, "--tail", tails, tailSeconds_,
                 "Ring-out after the last key (default 0.5 with --midi, 0 with --keys)")
        ->type_name ("S");
}

void PhraseOptions::refuseContradictions() const
{
    if (midiFile_.empty() == keys_.empty())
        throw CLI::ValidationError ("either --midi or --keys is needed");
    if (! keys_.empty() && seconds_ == 0.0)
        throw CLI::ValidationError ("--keys needs --seconds");
    if (keys_.empty() && seconds_ != 0.0)
        throw CLI::ValidationError ("--seconds goes with --keys, for a MIDI file has its own length");
}

Phrase PhraseOptions::phraseFor (const PhraseKeyboards& keyboards, std::ostream& err) const
{
    return isMidi() ? midiPhrase (keyboards, err) : heldPhrase (keyboards);
}

Phrase PhraseOptions::heldPhrase (const PhraseKeyboards& keyboards) const
{
    const auto& compass = keyboards.heldCompass;
    for (const int key : keys_)
        if (key < compass.lowestKey || key > compass.highestKey)
            throw Error ("Key " + keyName (key) + " is not on this keyboard, which goes from " + compassWords (compass)
                         + "; choose a key between them.");
    auto phrase = heldKeys (keys_, seconds_, keyboards.heldKeyboard);
    phrase.seconds += tailOr (0.0);
    return phrase;
}

Phrase PhraseOptions::midiPhrase (const PhraseKeyboards& keyboards, std::ostream& err) const
{
    auto played = readMidiPhrase (midiFile_, keyboards.channels);
    if (played.phrase.seconds > longestSeconds)
        throw Error (midiFile_.string() + ": the MIDI file lasts longer than an hour; render it in parts.");
    for (const auto& sentence : leftOutSentences (midiFile_, played, keyboards.channels))
        err << "stopwright: " << sentence << '\n';
    played.phrase.seconds += tailOr (midiTailSeconds);
    return std::move (played.phrase);
}

} // namespace stopwright
