// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/Instrument.h"

#include "Organ/Spelling.h"
#include "Units/Error.h"
#include "Units/Pitch.h"
#include "Units/QuotedText.h"

#include <algorithm>

namespace stopwright
{

namespace
{

const Division& divisionOf (const Instrument& instrument, const std::string& name)
{
    std::vector<std::string_view> names;
    for (const auto& division : instrument.divisions)
    {
        if (division.name == name)
            return division;
        names.emplace_back (division.name);
    }
    throw Error ("The instrument has no division " + quotedText (name)
                 + (names.empty() ? "." : "; it has " + listedWords (names, "and") + "."));
}

} // namespace

Tuning tuningOf (const TuningStatement& statement, const std::vector<Footage>& mutations)
{
    if (statement.kind == TuningKind::topOctave)
    {
        if (statement.mutations == MutationSource::exact)
            throw Error ("A top-octave divider set has no generators for exact mutations; let them be borrowed.");
        return Tuning::topOctave (statement.clockHz, statement.divisors, statement.octave, statement.highestKey,
                                  statement.top);
    }

    // Masters are rounded to whole time units, so the highest one may lie a hair above its nominal pitch.
    constexpr double margin = 1.0 + 1e-9;
    const auto highestHz = equalTemperedHz (statement.highestKey, statement.referenceHz) * margin;
    return Tuning::equalTempered (statement.referenceHz, highestHz, statement.mutations, mutations, statement.top);
}

KeySource keySourceOf (const Instrument& instrument, const std::string& division, const Card& card)
{
    const auto& keyboard = divisionOf (instrument, division);
    return { .tuning = tuningOf (instrument.tuning, mutationsOf (card)),
             .keyer = instrument.keyer,
             .lowestKey = keyboard.lowestKey,
             .highestKey = keyboard.highestKey };
}

} // namespace stopwright
