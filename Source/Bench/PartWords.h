// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/CardKnob.h"

#include <juce_core/juce_core.h>

namespace stopwright
{

/// What the window says about parts: headings, and lessons that teach the trade's word. Threading: message thread.
class PartWords
{
public:
    /// The name of the part or tap: "R1", "Square 8".
    static juce::String title (const CardKnob& knob);

    /// Which number it is: "resistance", "level", "position" ...
    static juce::String number (KnobKind kind, CardKnob::Place place);

    /// One or two sentences on what the part is and does.
    static juce::String lesson (const Card& card, const CardKnob& knob);

    /// The same of a part that has nothing to turn, and what it stands at: "ideal", "15 V", "npn".
    static juce::String lesson (const PartValue& value);
    static juce::String standing (const PartValue& value);

    /// What a lead is called, in the order of the part's kind: "wiper", "base"; "lead 1" where they are alike.
    static juce::String leadName (const PartValue& value, std::size_t lead);

    /// How a knob is handled.
    static juce::String handling (CardKnob::Place place = CardKnob::Place::part);

    static juce::String switchLesson();

    /// "staircase 4, 8 ft".
    static juce::String tapLine (const Tap& tap);

    /// Heading over the parts of one kind, in capitals.
    static juce::String heading (const PartValue& value);
};

} // namespace stopwright
