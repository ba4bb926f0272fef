// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/InstrumentCards.h"
#include "Organ/KeySource.h"

#include <string>

namespace stopwright
{

/// Below this a card counts as this loud, or a dead one would be amplified without end: at the level the engine starts
/// with (-30 dB re full scale) the make-up gain ends at 60 dB, one millivolt as loud as full scale.
inline constexpr double lowestReferenceVolts = 31.6e-6;

/// What a card's loudness is measured by: rms volts of one C4 (or the nearest key of the compass) as computed from
/// Fourier series and analogue response, not below lowestReferenceVolts.
/// Threading: [control]. Fails: Error when the card's network is not sound.
double referenceVolts (const Card& card, const KeySource& keySource);

/// The same of one stop of an instrument drawn alone, at the outlets, shoe open, as played: half a second of it.
/// A tablet that cannot sound, or none by that name, gives lowestReferenceVolts. Threading: [control]. Fails: Error.
double referenceVolts (const Instrument& instrument, const InstrumentCards& cards, const std::string& tablet);

} // namespace stopwright
