// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/Pitch.h"

#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <array>
#include <charconv>
#include <cmath>
#include <optional>

namespace stopwright
{

namespace
{

constexpr int keysPerOctave = 12;
constexpr int highestKey = 127;
constexpr int keyOfA4 = 69;

bool skip (std::string_view& text, std::string_view start)
{
    if (! text.starts_with (start))
        return false;

    text.remove_prefix (start.size());
    return true;
}

/// Semitones above C of a note letter, which is taken off the text.
std::optional<int> takeLetter (std::string_view& text)
{
    constexpr std::array semitones { 9, 11, 0, 2, 4, 5, 7 }; // A B C D E F G
    if (text.empty())
        return std::nullopt;

    const char lower = text.front() >= 'a' ? 'a' : 'A';
    const int letter = text.front() - lower;
    if (letter < 0 || letter >= static_cast<int> (semitones.size()))
        return std::nullopt;

    text.remove_prefix (1);
    return semitones[static_cast<std::size_t> (letter)];
}

int takeAccidental (std::string_view& text)
{
    if (skip (text, "#") || skip (text, "\u266f"))
        return 1;
    if (skip (text, "b") || skip (text, "\u266d"))
        return -1;
    return 0;
}

std::optional<int> takeOctave (std::string_view text)
{
    int octave = 0;
    const auto* end = text.data() + text.size();
    const auto [stop, failure] = std::from_chars (text.data(), end, octave);
    const bool whole = failure == std::errc() && stop == end;
    return whole && octave >= -1 && octave <= 9 ? std::optional (octave) : std::nullopt;
}

} // namespace

int parseKey (std::string_view text)
{
    auto rest = text;
    const auto letter = takeLetter (rest);
    const auto accidental = takeAccidental (rest);
    const auto octave = takeOctave (rest);
    const auto key = octave.value_or (0) * keysPerOctave + keysPerOctave + letter.value_or (0) + accidental;

    if (! letter || ! octave || key < 0 || key > highestKey)
        throw Error (quotedText (text)
                     + " is not a key: write a note and its octave from C-1 to G9, as C4, F#3 or Bb2.");

    return key;
}

std::string keyName (int key)
{
    constexpr std::array names { "C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B" };
    if (key < 0 || key > highestKey)
        throw Error ("There is no key number " + std::to_string (key) + ": keys are counted from 0 (C-1) to 127 (G9).");

    return names[static_cast<std::size_t> (key % keysPerOctave)] + std::to_string (key / keysPerOctave - 1);
}

double equalTemperedHz (double key, double referenceHz) noexcept
{
    return referenceHz * std::exp2 ((key - keyOfA4) / keysPerOctave);
}

double centsBetween (double fromHz, double toHz) noexcept
{
    constexpr double centsPerOctave = 1200.0;
    return centsPerOctave * std::log2 (toHz / fromHz);
}

} // namespace stopwright
