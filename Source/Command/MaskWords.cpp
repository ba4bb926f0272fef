// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/MaskWords.h"

#include "Circuit/FindingWords.h"
#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"
#include "Units/CsvCell.h"
#include "Units/Error.h"
#include "Units/Pitch.h"

#include <algorithm>
#include <array>

namespace stopwright
{

std::string entryWords (const TargetMask& mask, std::size_t entry)
{
    if (entry < mask.harmonics.size())
        return std::string ("h").append (std::to_string (mask.harmonics[entry].harmonic));
    return "band " + partWords (mask.bands[entry - mask.harmonics.size()].name);
}

std::string entryCell (const TargetMask& mask, std::size_t entry)
{
    if (entry < mask.harmonics.size())
        return entryWords (mask, entry);
    return csvCell ("band " + mask.bands[entry - mask.harmonics.size()].name);
}

const MaskWish& wishOf (const TargetMask& mask, std::size_t entry)
{
    return entry < mask.harmonics.size() ? mask.harmonics[entry].wish : mask.bands[entry - mask.harmonics.size()].wish;
}

std::string originWords (Certainty certainty, const std::string& source)
{
    const std::string word (certaintyWord (certainty));
    if (source.empty())
        return certainty == Certainty::commonPractice ? word + ", no source" : word;
    return word + ": " + printable (source, DocumentLimits::sourceCharacters);
}

std::string keysWords (int lowestKey, int highestKey)
{
    constexpr int last = 127;
    if (lowestKey == 0 && highestKey == last)
        return "every key";
    if (lowestKey == highestKey)
        return keyName (lowestKey);
    return keyName (lowestKey) + " to " + keyName (highestKey);
}

std::string_view verdictWord (MaskVerdict verdict) noexcept
{
    constexpr std::array<std::string_view, 7> words { "inside",       "too strong", "too weak",  "absent",
                                                      "above 20 kHz", "no partial", "other keys" };
    return words[static_cast<std::size_t> (verdict)];
}

std::vector<int> keysToCompare (const TargetMask& mask, const std::vector<int>& named, int lowestKey, int highestKey)
{
    for (const int key : named)
        if (key < lowestKey || key > highestKey)
            throw Error ("The key " + keyName (key) + " is not on this keyboard, which has "
                         + keysWords (lowestKey, highestKey) + "; name one of those.");
    if (! named.empty())
        return named;
    std::vector<int> keys;
    for (int key = lowestKey; key <= highestKey; ++key)
        if (mask.isFor (key))
            keys.push_back (key);
    if (keys.empty())
        throw Error ("The mask is meant for " + keysWords (mask.lowestKey, mask.highestKey) + ", and this keyboard has "
                     + keysWords (lowestKey, highestKey) + "; name the keys to compare with --keys.");
    return keys;
}

std::string maskWords (const TargetMask& mask, const std::vector<int>& keys)
{
    std::string words = "mask \"" + printable (mask.name, DocumentLimits::titleCharacters) + "\", meant for "
                        + keysWords (mask.lowestKey, mask.highestKey) + "\n  "
                        + originWords (mask.certainty, mask.source) + "\n";
    if (std::ranges::any_of (keys, [&] (int key) { return ! mask.isFor (key); }))
        words += "  Some of these keys are not among those it is meant for.\n";
    return words;
}

} // namespace stopwright
