// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/CardKnob.h"
#include "Organ/Instrument.h"

namespace stopwright
{

// The numbers that stand in the instrument and not in a card: the knobs whose isInInstrument is true. Threading: [control].

bool hasKnob (const Instrument& instrument, const CardKnob& knob) noexcept;

/// What it stands at, in SI units. Fails: Error when the instrument has no such knob.
double valueOf (const Instrument& instrument, const CardKnob& knob);

/// The instrument with another value there. Fails: Error when it has no such knob, or on a value out of range.
Instrument withValue (Instrument instrument, const CardKnob& knob, double value);

/// What a step of the history is called by: "Krummhorn 8 mixing", "Tremulant depth".
std::string nameInHistory (const CardKnob& knob);

} // namespace stopwright
