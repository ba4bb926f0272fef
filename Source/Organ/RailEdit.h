// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"
#include "Organ/Instrument.h"

#include <string>
#include <string_view>

namespace stopwright
{

// Alterations of the stop rail: each gives back the changed document and leaves the one it was given as it is. What was there
// before the first alteration is noted in asFound, and taken out of it when it is there again; with the last, asFound goes,
// with its note and with unknown fields in it.
// Threading: [control]. Fails: Error with one sentence, from every function here: no such tablet, bus, division or tap, a
// value out of its range.

/// An empty `bus` takes the stop off its bus.
Instrument moveStopToBus (Instrument instrument, std::string_view tablet, const std::string& bus);

/// The resistor from the card's output to the bus, ohms.
Instrument setMixing (Instrument instrument, std::string_view tablet, double ohms);

Instrument setRetired (Instrument instrument, std::string_view tablet, WhenRetired whenRetired);

/// 1 or -1.
Instrument setPolarity (Instrument instrument, std::string_view tablet, int polarity);

/// The keyboard whose keys play the stop.
Instrument setDivision (Instrument instrument, std::string_view tablet, const std::string& division);

/// A file that starts from the folder of the instrument's document; empty for a blank tablet. It is not opened.
Instrument giveCard (Instrument instrument, std::string_view tablet, const std::string& cardFile);

/// Day and reason of what was altered at a tablet. Fails too where nothing is.
Instrument noteAlteration (Instrument instrument, std::string_view tablet, const AlterationNote& note);

/// Takes the tap's wave, footage, level and source resistance from a keyed bus of the instrument. A card that several
/// tablets use changes for all of them.
Card moveTapToKeyedBus (Card card, std::string_view tap, const Instrument& instrument, std::string_view keyedBus);

/// The same from any keyed wave.
Card setTapSource (Card card, std::string_view tap, const WaveSource& source);

/// 1 or -1.
Card setTapPolarity (Card card, std::string_view tap, int polarity);

/// Takes the tap's lead to another node of an instrument's own card. Where a card is still being drawn, see rewireTap.
Card moveTapToNode (Card card, std::string_view tap, const std::string& node);

Card noteAlteration (Card card, std::string_view tap, const AlterationNote& note);

} // namespace stopwright
