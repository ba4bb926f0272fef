// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/PhraseOptions.h"

#include "Command/Options.h"
#include "Organ/DocumentFile.h"
#include "Organ/Spelling.h"
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

std::string compassWords (const Compass& compass)
{
    return keyName (compass.lowestKey) + " to " + keyName (compass.highestKey);
}

std::string keysWords (const ChannelCompasses& channels)
{
    const auto first = std::ranges::find_if (channels, [] (const auto& compass) { return compass.has_value(); });
    const bool areAlike =
        std::all_of (first, channels.end(), [&] (const auto& compass) { return ! compass || compass == *first; });
    if (first != channels.end() && areAlike)
        return "the keys from " + compassWords (**first);
    return "the keys of their divisions";
}

/// "channel 4", "channels 4, 7 and 9".
std::string channelWords (const std::vector<int>& channels)
{
    std::vector<std::string> numbers;
    numbers.reserve (channels.size());
    for (const int channel : channels)
        numbers.push_back (std::to_string (channel));
    const std::vector<std::string_view> views (numbers.begin(), numbers.end());
    return (channels.size() == 1 ? "channel " : "channels ") + listedWords (views, "and");
}

[[noreturn]] void refuseNothing (const std::string& origin, const MidiPhrase& played, const ChannelCompasses& channels)
{
    if (played.notesUnheard != 0 && played.notesOutside == 0)
        throw Error (origin + ": there is nothing to play in the MIDI file, for no division hears "
                     + channelWords (played.unheardChannels) + "; give a division that channel in the instrument.");
    throw Error (origin + ": there is nothing to play in the MIDI file on " + keysWords (channels) + ".");
}

void sayWhatIsLeftOut (const std::string& origin,
                       const MidiPhrase& played,
                       const ChannelCompasses& channels,
                       std::ostream& err)
{
    const auto beginning = [&] (int count)
    {
        return "stopwright: " + origin + ": " + std::to_string (count) + " of " + std::to_string (played.notesInFile())
               + " notes ";
    };
    if (played.notesOutside != 0)
        err << beginning (played.notesOutside) << "lie outside " << keysWords (channels) << " and are left out.\n";
    if (played.notesUnheard != 0)
        err << beginning (played.notesUnheard) << "are on " << channelWords (played.unheardChannels)
            << ", which no division hears, and are left out.\n";
}

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
    const auto origin = midiFile_.string();
    auto played = phraseOf (parseMidiFile (readDocumentFile (midiFile_), origin), keyboards.channels);
    if (played.notes == 0)
        refuseNothing (origin, played, keyboards.channels);
    if (played.phrase.seconds > longestSeconds)
        throw Error (origin + ": the MIDI file lasts longer than an hour; render it in parts.");
    sayWhatIsLeftOut (origin, played, keyboards.channels, err);
    played.phrase.seconds += tailOr (midiTailSeconds);
    return std::move (played.phrase);
}

} // namespace stopwright
