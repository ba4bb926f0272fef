// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Coupler.h"
#include "Organ/KeyContacts.h"
#include "Organ/KeySource.h"
#include "Organ/KeyedBus.h"
#include "Organ/MixingBus.h"
#include "Organ/Outlet.h"
#include "Organ/Preamp.h"
#include "Organ/StopTablet.h"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// A keyboard or pedalboard: name, its lowest and highest key (MIDI numbers), and the MIDI channel (1 .. 16) it hears.
/// What no division claims is heard by the first one without a channel of its own.
struct Division
{
    std::string name;
    int lowestKey = 36;
    int highestKey = 96;
    std::optional<int> midiChannel;

    bool operator== (const Division&) const = default;
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

    bool operator== (const TuningStatement&) const = default;
};

/// The masters a statement describes, with generators for `mutations` where the statement has them exact.
/// Fails: Error on a tuning that cannot be made. Threading: [control].
Tuning tuningOf (const TuningStatement& statement, const std::vector<Footage>& mutations);

/// An instrument: what a stop is played from and stands beside. A stop's card goes through its mixing resistor onto a
/// mixing bus, from there through a preamp to an outlet. Names of keyed buses, mixing buses, preamps, outlets, divisions,
/// and of tablets with couplers, are unique each among their kind. Unknown fields are kept as in Card ("instrument",
/// "tuning", "keyer", "contacts", and "division:NAME", "keyedBus:NAME", "mixingBus:NAME", "preamp:NAME",
/// "stage:PREAMP/NAME", "outlet:NAME", "coupler:NAME", "stop:NAME"; of what stands inside these "keyer:KEYED BUS",
/// "stopAsFound:STOP", "coupling:PREAMP/STAGE", and "tremulant:OUTLET", "rotary:OUTLET", "horn:OUTLET", "drum:OUTLET").
struct Instrument
{
    std::string name;
    std::string note;
    TuningStatement tuning;
    KeyerSettings keyer;
    std::vector<Division> divisions;
    KeyContacts contacts;
    std::vector<KeyedBus> keyedBuses;
    std::vector<MixingBus> mixingBuses;
    std::vector<Preamp> preamps;
    std::vector<Outlet> outlets;
    std::vector<Coupler> couplers;
    std::vector<StopTablet> stops;
    std::map<std::string, std::string> unknownFields;

    bool operator== (const Instrument&) const = default;
};

/// Fails: Error on a division the instrument does not have, or a tuning that cannot be made. Threading: [control].
KeySource keySourceOf (const Instrument& instrument, const std::string& division, const Card& card);

} // namespace stopwright
