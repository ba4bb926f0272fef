// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/CommandWords.h"

#include "Command/NameList.h"
#include "Units/Error.h"

namespace stopwright
{

namespace
{

constexpr const char* usage =
    "Usage: stopwright-bench [DOCUMENT] [--midi FILE] [--stops NAMES]\n\n"
    "Opens the voicing bench on a card or an instrument; without DOCUMENT, on the demonstration\n"
    "organ that comes with the program.\n\n"
    "  --midi FILE    plays a standard MIDI file once the sound runs\n"
    "  --stops NAMES  tablets of the instrument to draw instead of those its document says are\n"
    "                 drawn, couplers too, as in \"Diapason 8, Oboe 8\"; or all, for every stop\n"
    "  -h, --help     this text\n"
    "  --version      the version of the program\n";

constexpr int wrongUsage = 2;

CommandWords refused (const std::string& sentence)
{
    return { .exitStatus = wrongUsage, .text = "stopwright-bench: " + sentence + "\n\n" + usage };
}

} // namespace

CommandWords readCommandWords (int argumentCount, const char* const* arguments)
{
    CommandWords words;
    for (int index = 1; index < argumentCount; ++index)
    {
        const std::string word = arguments[index];
        if (word == "--help" || word == "-h")
            return { .exitStatus = 0, .text = usage };
        if (word == "--version")
            return { .exitStatus = 0, .text = "stopwright-bench " STOPWRIGHT_VERSION "\n" };
        const bool isMidi = word == "--midi";
        if (isMidi || word == "--stops")
        {
            if (++index == argumentCount)
                return refused (word + (isMidi ? " needs a file." : " needs the names of tablets."));
            if (isMidi)
                words.midiFile = arguments[index];
            else if (words.stops = namesIn (arguments[index]); words.stops.empty())
                return refused ("--stops needs at least one name, as in \"Diapason 8, Oboe 8\".");
        }
        else if (word.starts_with ('-'))
        {
            return refused ("there is no option " + word + ".");
        }
        else if (! words.document.empty())
        {
            return refused ("one document at a time, please.");
        }
        else
        {
            words.document = word;
        }
    }
    return words;
}

} // namespace stopwright
