// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/MidiReading.h"

#include "Organ/DocumentFile.h"
#include "Organ/Spelling.h"
#include "Units/Error.h"
#include "Units/Pitch.h"

#include <algorithm>
#include <string_view>

namespace stopwright
{

namespace
{

std::string compassesWords (const ChannelCompasses& channels)
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
    throw Error (origin + ": there is nothing to play in the MIDI file on " + compassesWords (channels) + ".");
}

} // namespace

std::string compassWords (const Compass& compass)
{
    return keyName (compass.lowestKey) + " to " + keyName (compass.highestKey);
}

MidiPhrase readMidiPhrase (const std::filesystem::path& file, const ChannelCompasses& channels)
{
    const auto origin = file.string();
    auto played = phraseOf (parseMidiFile (readDocumentFile (file), origin), channels);
    if (played.notes == 0)
        refuseNothing (origin, played, channels);
    return played;
}

std::vector<std::string>
    leftOutSentences (const std::filesystem::path& file, const MidiPhrase& played, const ChannelCompasses& channels)
{
    const auto beginning = [&] (int count) {
        return file.string() + ": " + std::to_string (count) + " of " + std::to_string (played.notesInFile())
               + " notes ";
    };
    std::vector<std::string> sentences;
    if (played.notesOutside != 0)
        sentences.push_back (beginning (played.notesOutside) + "lie outside " + compassesWords (channels)
                             + " and are left out.");
    if (played.notesUnheard != 0)
        sentences.push_back (beginning (played.notesUnheard) + "are on " + channelWords (played.unheardChannels)
                             + ", which no division hears, and are left out.");
    return sentences;
}

} // namespace stopwright
