// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/PartKnob.h"
#include "Circuit/ValueLimits.h"
#include "Organ/Card.h"

#include <string>
#include <vector>

namespace stopwright
{

/// Names one number that can be turned: of a part, the level of a tap, or what stands in the instrument and not in the
/// card, the mixing resistor of a stop and rate and depth of a tremulant.
struct CardKnob
{
    enum class Place
    {
        part,
        tapLevel,
        mixing,
        tremulantRate,
        tremulantDepth
    };

    Place place = Place::part;
    std::string name; ///< of the part, the tap, the tablet or the outlet
    KnobKind kind = KnobKind::value;

    bool operator== (const CardKnob&) const = default;

    PartKnob partKnob() const { return { name, kind }; }

    bool isInInstrument() const noexcept { return place != Place::part && place != Place::tapLevel; }
};

/// What the knob of a card stands at, in SI units. Fails: Error when the card has no such knob. Threading: [control].
double valueOf (const Card& card, const CardKnob& knob);

/// Sets the number without checking its range. Fails: Error when the card has no such knob. Threading: [control].
void setValueOf (Card& card, const CardKnob& knob, double value);

/// Which values are legal, of the instrument's numbers too. A tap's level is taken as 1 mV .. 100 V peak to peak. Threading: [control].
const ValueRange& rangeOf (const Card& card, const CardKnob& knob);

/// The knobs of a card in the order of its taps and parts: each tap's level; each part's value; the position before
/// the track of a potentiometer; the winding resistance of a coil that has one; the gain-bandwidth product of an
/// amplifier that has one. Switches have none. Threading: [control].
std::vector<CardKnob> knobsOf (const Card& card);

/// The part or tap of that name, or nullptr.
const Part* findPart (const Card& card, const std::string& name) noexcept;
const Tap* findTap (const Card& card, const std::string& name) noexcept;

} // namespace stopwright
