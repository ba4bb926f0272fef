// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/KeySource.h"

#include <array>
#include <map>
#include <string>
#include <vector>

namespace stopwright
{

/// A keyboard or pedalboard: name and its lowest and highest key (MIDI numbers).
struct Division
{
    std::string name;
    int lowestKey = 36;
    int highestKey = 96;
};

/// A keyed bus of the instrument as found: what a tap can be taken from.
struct KeyedBus
{
    std::string name;
    Footage footage = Footage::parse ("8");
    Wave wave;
    double voltsPeakToPeak = 1.0;
    double sourceOhms = 0.0;
};

/// One tablet of the stop rail. `cardFile` is relative to the instrument's document; empty for a blank tablet.
/// `proposed` marks the tablet the work is about.
struct StopTablet
{
    std::string name;
    std::string division;
    std::string cardFile;
    bool proposed = false;
};

enum class TuningKind
{
    equalTemperament,
    topOctave
};

/// The tuning as the document states it; tuningOf makes the working Tuning.
struct TuningStatement
{
    TuningKind kind = TuningKind::equalTemperament;
    double referenceHz = 440.0;
    double clockHz = 2000240.0;
    std::array<int, 12> divisors {}; ///< C .. B
    int octave = 8;
    int highestKey = 120; ///< highest generator, MIDI number (C9 = 120)
    TopBehaviour top = TopBehaviour::silent;
    MutationSource mutations = MutationSource::borrowed;
};

/// The masters a statement describes, with generators for `mutations` where the statement has them exact.
/// Fails: Error on a tuning that cannot be made. Threading: [control].
Tuning tuningOf (const TuningStatement& statement, const std::vector<Footage>& mutations);

/// An instrument: what a stop is played from and stands beside. Unknown fields are kept as in Card ("instrument",
/// "tuning", "keyer", "division:NAME", "bus:NAME", "stop:NAME").
struct Instrument
{
    std::string name;
    std::string note;
    TuningStatement tuning;
    KeyerSettings keyer;
    std::vector<Division> divisions;
    std::vector<KeyedBus> buses;
    std::vector<StopTablet> stops;
    std::map<std::string, std::string> unknownFields;
};

/// Fails: Error on a division the instrument does not have, or a tuning that cannot be made. Threading: [control].
KeySource keySourceOf (const Instrument& instrument, const std::string& division, const Card& card);

} // namespace stopwright
