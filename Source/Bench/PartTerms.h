// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/CardKnob.h"

#include <juce_core/juce_core.h>

namespace stopwright
{

/// Which term of the glossary a part, or one of its numbers, is about. Threading: [control].

/// "resistor", "op-amp" ...
juce::String partTerm (const PartValue& value);

/// "mixing resistor", "tremulant", "winding", "capacitor" ...; empty for a part that the card does not have.
juce::String knobTerm (const Card& card, const CardKnob& knob);

} // namespace stopwright
