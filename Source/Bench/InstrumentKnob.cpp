// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/InstrumentKnob.h"

#include "Organ/RailEdit.h"
#include "Organ/TremulantEdit.h"
#include "Units/Error.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

/// The number, or nullptr where the instrument has none such.
const double* numberIn (const Instrument& instrument, const CardKnob& knob) noexcept
{
    if (knob.place == CardKnob::Place::mixing)
    {
        const auto stop = std::ranges::find (instrument.stops, knob.name, &StopTablet::name);
        return stop != instrument.stops.end() ? &stop->mixingOhms : nullptr;
    }
    const auto* const tremulant = knob.isInInstrument() ? findTremulant (instrument, knob.name) : nullptr;
    if (tremulant == nullptr)
        return nullptr;
    return knob.place == CardKnob::Place::tremulantRate ? &tremulant->rateHz : &tremulant->depth;
}

} // namespace

bool hasKnob (const Instrument& instrument, const CardKnob& knob) noexcept
{
    return numberIn (instrument, knob) != nullptr;
}

double valueOf (const Instrument& instrument, const CardKnob& knob)
{
    const auto* const number = numberIn (instrument, knob);
    if (number == nullptr)
        throw Error ("There is no number of that kind on \"" + knob.name
                     + "\"; pick a tablet or an outlet of the open instrument.");
    return *number;
}

Instrument withValue (Instrument instrument, const CardKnob& knob, double value)
{
    valueOf (instrument, knob);
    if (knob.place == CardKnob::Place::mixing)
        return setMixing (std::move (instrument), knob.name, value);
    auto settings = *findTremulant (instrument, knob.name);
    (knob.place == CardKnob::Place::tremulantRate ? settings.rateHz : settings.depth) = value;
    return setTremulant (std::move (instrument), knob.name, settings);
}

std::string nameInHistory (const CardKnob& knob)
{
    switch (knob.place)
    {
        case CardKnob::Place::mixing:
            return knob.name + " mixing";
        case CardKnob::Place::tremulantRate:
            return knob.name + " rate";
        case CardKnob::Place::tremulantDepth:
            return knob.name + " depth";
        case CardKnob::Place::part:
        case CardKnob::Place::tapLevel:
            break;
    }
    return knob.name;
}

} // namespace stopwright
