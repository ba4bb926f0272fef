// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/TuningFields.h"

#include "Units/Error.h"
#include "Units/Pitch.h"

#include <array>
#include <cmath>
#include <cstddef>

namespace stopwright
{

namespace
{

/// Each in the order of its enum.
constexpr std::array<std::string_view, 2> tuningWords { "equalTemperament", "topOctave" };
constexpr std::array<std::string_view, 2> topWords { "silent", "breakBack" };
constexpr std::array<std::string_view, 2> mutationWords { "exact", "borrowed" };
constexpr std::array<std::string_view, 3> keyerWords { "linear", "rc", "contact" };
constexpr std::array<std::string_view, 12> noteWords {
    "C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B"
};

constexpr ValueRange referenceRange { "reference pitch", Quantity::frequency, 200.0, 1000.0 };
constexpr ValueRange clockRange { "clock", Quantity::frequency, 1e4, 1e9 };
constexpr ValueRange attackRange { "attack", Quantity::time, 0.0, 60.0 };
constexpr ValueRange releaseRange { "release", Quantity::time, 0.0, 60.0 };
constexpr ValueRange bleedRange { "bleed", Quantity::number, -300.0, 0.0 };

template <std::size_t count>
std::string_view wordOf (const std::array<std::string_view, count>& words, auto value)
{
    return words[static_cast<std::size_t> (value)];
}

void readDivisors (FieldReader& tuning, TuningStatement& statement)
{
    constexpr int smallestDivisor = 2;
    constexpr int largestDivisor = 65535;
    auto divisors = tuning.object ("divisors");
    for (std::size_t note = 0; note < noteWords.size(); ++note)
        statement.divisors[note] = divisors.whole (noteWords[note], smallestDivisor, largestDivisor);
    if (! divisors.unknownFields().empty())
        divisors.refuse ({}, "only the twelve notes C, C# .. B can have a divisor, black keys by their sharps.");
}

JsonTree divisorTree (const TuningStatement& statement)
{
    JsonTree divisors;
    for (std::size_t note = 0; note < noteWords.size(); ++note)
        divisors[std::string (noteWords[note])] = statement.divisors[note];
    return divisors;
}

/// Numbers that are each in range may still not make a tuning, such as a highest generator far from the divided octave.
void requireTuning (const FieldReader& instrument, const TuningStatement& statement)
{
    try
    {
        tuningOf (statement, {});
    }
    catch (const Error& fault)
    {
        instrument.refuse ("tuning", fault.what());
    }
}

} // namespace

int readKey (FieldReader& fields, std::string_view key, std::optional<std::string> fallback)
{
    const auto text = fields.shortText (key, std::move (fallback));
    try
    {
        return parseKey (text);
    }
    catch (const Error& fault)
    {
        fields.refuse (key, fault.what());
    }
}

TuningStatement readTuning (FieldReader& instrument, UnknownFieldStore& unknown)
{
    TuningStatement statement;
    auto tuning = instrument.object ("tuning");
    statement.kind = static_cast<TuningKind> (tuning.choice ("kind", tuningWords));
    if (statement.kind == TuningKind::equalTemperament)
    {
        statement.referenceHz = tuning.quantity ("referenceHz", referenceRange, statement.referenceHz);
    }
    else
    {
        constexpr int highestOctave = 10;
        statement.clockHz = tuning.quantity ("clockHz", clockRange);
        statement.octave = tuning.whole ("octave", 0, highestOctave, statement.octave);
        readDivisors (tuning, statement);
    }
    unknown.take ("tuning", {}, tuning);

    statement.highestKey = readKey (instrument, "highestGenerator", "C9");
    statement.top = static_cast<TopBehaviour> (instrument.choice ("aboveHighest", topWords, 0));
    statement.mutations = static_cast<MutationSource> (instrument.choice ("mutations", mutationWords, 1));
    if (statement.kind == TuningKind::topOctave && statement.mutations == MutationSource::exact)
        instrument.refuse ("mutations",
                           "a top-octave divider set has no generators for exact mutations; write \"borrowed\".");
    requireTuning (instrument, statement);
    return statement;
}

void writeTuning (const TuningStatement& statement, JsonTree& instrument, UnknownFieldSource& unknown)
{
    JsonTree tuning;
    tuning["kind"] = wordOf (tuningWords, statement.kind);
    if (statement.kind == TuningKind::equalTemperament)
    {
        tuning["referenceHz"] = numberTree (statement.referenceHz);
    }
    else
    {
        tuning["clockHz"] = numberTree (statement.clockHz);
        tuning["octave"] = statement.octave;
        tuning["divisors"] = divisorTree (statement);
    }
    unknown.putInto (tuning, "tuning", {});

    instrument["tuning"] = std::move (tuning);
    instrument["highestGenerator"] = keyName (statement.highestKey);
    instrument["aboveHighest"] = wordOf (topWords, statement.top);
    instrument["mutations"] = wordOf (mutationWords, statement.mutations);
}

KeyerSettings readKeyer (FieldReader& owner, UnknownFieldStore& unknown, const std::string& busName)
{
    KeyerSettings keyer;
    if (! owner.has ("keyer"))
        return keyer;
    auto fields = owner.object ("keyer");
    keyer.shape = static_cast<KeyerShape> (fields.choice ("shape", keyerWords, 0));
    keyer.attackSeconds = fields.quantity ("attackSeconds", attackRange, keyer.attackSeconds);
    keyer.releaseSeconds = fields.quantity ("releaseSeconds", releaseRange, keyer.releaseSeconds);
    keyer.bleedDb = fields.quantity ("bleedDb", bleedRange, keyer.bleedDb);
    unknown.take ("keyer", busName, fields);
    return keyer;
}

void writeKeyer (const KeyerSettings& settings,
                 JsonTree& owner,
                 UnknownFieldSource& unknown,
                 const std::string& busName)
{
    JsonTree keyer;
    keyer["shape"] = wordOf (keyerWords, settings.shape);
    keyer["attackSeconds"] = numberTree (settings.attackSeconds);
    keyer["releaseSeconds"] = numberTree (settings.releaseSeconds);
    if (std::isfinite (settings.bleedDb))
        keyer["bleedDb"] = numberTree (settings.bleedDb);
    unknown.putInto (keyer, "keyer", busName);
    owner["keyer"] = std::move (keyer);
}

} // namespace stopwright
