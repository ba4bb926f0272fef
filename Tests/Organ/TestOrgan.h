// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/InstrumentCards.h"

#include <string>

namespace stopwright::test
{

/// An instrument and the cards of its stops, put together for a test.
struct TestOrgan
{
    Instrument instrument;
    InstrumentCards cards;

    /// A stop of a division on a bus; returns its tablet for changes.
    StopTablet& add (const std::string& name,
                     const Card& card,
                     const std::string& division = "Upper",
                     const std::string& bus = "Bus",
                     double mixingOhms = 47e3);

    StopTablet& tablet (const std::string& name);
};

/// Two manuals of 61 keys and a pedal of 30, equal temperament, one bus of this kind and a preamp of gain 1 to a main
/// outlet; no stops.
TestOrgan emptyOrgan (const MixingBus& bus);

/// The demonstration organ with its cards.
TestOrgan larkfield();

/// A square of 1 V peak to peak on the bare tap: no part at all.
Card bareCard (const std::string& footage = "8", double volts = 1.0);

/// The bus of 100 kilohm, nothing else on it.
MixingBus passiveBus();

} // namespace stopwright::test
