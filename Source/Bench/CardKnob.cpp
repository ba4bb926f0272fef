// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/CardKnob.h"

#include "Organ/TremulantEdit.h"
#include "Units/Error.h"

#include <algorithm>
#include <concepts>
#include <type_traits>

namespace stopwright
{

namespace
{

constexpr ValueRange tapLevelRange { "tap level", Quantity::voltage, 1e-3, 100.0 };

[[noreturn]] void refuse (const CardKnob& knob)
{
    throw Error ("There is no number of that kind on \"" + knob.name + "\"; pick a part of the open card.");
}

template <typename Parts>
auto* findByName (Parts& parts, const std::string& name) noexcept
{
    const auto found = std::find_if (parts.begin(), parts.end(), [&] (const auto& part) { return part.name == name; });
    return found == parts.end() ? nullptr : &*found;
}

template <typename Value, typename Kind>
concept Like = std::same_as<std::remove_const_t<Value>, Kind>;

// numberOf: a pointer to the number of that kind within a part's value, or nullptr; const as the value is.

auto* numberOf (Like<Resistor> auto& resistor, KnobKind kind) noexcept
{
    return kind == KnobKind::value ? &resistor.ohms : nullptr;
}

auto* numberOf (Like<Capacitor> auto& capacitor, KnobKind kind) noexcept
{
    return kind == KnobKind::value ? &capacitor.farads : kind == KnobKind::leakOhms ? &capacitor.leakOhms : nullptr;
}

auto* numberOf (Like<Inductor> auto& inductor, KnobKind kind) noexcept
{
    if (kind == KnobKind::windingOhms)
        return &inductor.windingOhms;
    if (kind == KnobKind::selfFarads)
        return &inductor.selfFarads;
    return kind == KnobKind::value ? &inductor.henries : nullptr;
}

auto* numberOf (Like<Potentiometer> auto& potentiometer, KnobKind kind) noexcept
{
    return kind == KnobKind::value      ? &potentiometer.ohms
           : kind == KnobKind::position ? &potentiometer.position
                                        : nullptr;
}

double* numberOf (const Switch&, KnobKind) noexcept
{
    return nullptr;
}

auto* numberOf (Like<OpAmp> auto& amplifier, KnobKind kind) noexcept
{
    return kind == KnobKind::gainBandwidthHz && amplifier.gainBandwidthHz ? &*amplifier.gainBandwidthHz : nullptr;
}

auto* numberOf (Like<Diode> auto& diode, KnobKind kind) noexcept
{
    return kind == KnobKind::seriesOhms ? &diode.seriesOhms : nullptr;
}

double* numberOf (const Transistor&, KnobKind) noexcept
{
    return nullptr;
}

auto* numberOf (Like<Supply> auto& supply, KnobKind kind) noexcept
{
    return kind == KnobKind::seriesOhms ? &supply.seriesOhms : nullptr;
}

template <typename CardType>
auto& numberIn (CardType& card, const CardKnob& knob)
{
    using Number = std::conditional_t<std::is_const_v<CardType>, const double, double>;

    Number* number = nullptr;
    if (knob.place == CardKnob::Place::tapLevel)
    {
        if (auto* tap = findByName (card.taps, knob.name))
            number = &tap->voltsPeakToPeak;
    }
    else if (knob.isInInstrument())
    {
        refuse (knob);
    }
    else if (auto* part = findByName (card.parts, knob.name))
    {
        number = std::visit ([&] (auto& value) -> Number* { return numberOf (value, knob.kind); }, part->value);
    }

    if (number == nullptr)
        refuse (knob);
    return *number;
}

std::vector<KnobKind> seriesKnob (double seriesOhms)
{
    return seriesOhms > 0.0 ? std::vector { KnobKind::seriesOhms } : std::vector<KnobKind> {};
}

std::vector<KnobKind> kindsOf (const PartValue& value)
{
    if (std::holds_alternative<Potentiometer> (value))
        return { KnobKind::position, KnobKind::value };
    if (const auto* inductor = std::get_if<Inductor> (&value))
        return inductor->windingOhms > 0.0 ? std::vector { KnobKind::value, KnobKind::windingOhms }
                                           : std::vector { KnobKind::value };
    if (const auto* amplifier = std::get_if<OpAmp> (&value))
        return amplifier->gainBandwidthHz ? std::vector { KnobKind::gainBandwidthHz } : std::vector<KnobKind> {};
    if (const auto* diode = std::get_if<Diode> (&value))
        return seriesKnob (diode->seriesOhms);
    if (const auto* supply = std::get_if<Supply> (&value))
        return seriesKnob (supply->seriesOhms);
    if (std::holds_alternative<Switch> (value) || transistorIn (value) != nullptr)
        return {};
    return { KnobKind::value };
}

} // namespace

double valueOf (const Card& card, const CardKnob& knob)
{
    return numberIn (card, knob);
}

void setValueOf (Card& card, const CardKnob& knob, double value)
{
    numberIn (card, knob) = value;
}

const ValueRange& rangeOf (const Card& card, const CardKnob& knob)
{
    if (knob.place == CardKnob::Place::tapLevel)
        return tapLevelRange;
    if (knob.place == CardKnob::Place::mixing)
        return ValueLimits::resistance;
    if (knob.place == CardKnob::Place::tremulantRate)
        return TremulantLimits::rate;
    if (knob.place == CardKnob::Place::tremulantDepth)
        return TremulantLimits::depth;
    const auto* part = findPart (card, knob.name);
    if (part == nullptr)
        refuse (knob);
    return rangeOf (knob.kind, part->value);
}

std::vector<CardKnob> knobsOf (const Card& card)
{
    std::vector<CardKnob> knobs;
    for (const auto& tap : card.taps)
        knobs.push_back ({ CardKnob::Place::tapLevel, tap.name, KnobKind::value });
    for (const auto& part : card.parts)
    {
        for (const auto kind : kindsOf (part.value))
            knobs.push_back ({ CardKnob::Place::part, part.name, kind });
    }
    return knobs;
}

const Part* findPart (const Card& card, const std::string& name) noexcept
{
    return findByName (card.parts, name);
}

const Tap* findTap (const Card& card, const std::string& name) noexcept
{
    return findByName (card.taps, name);
}

} // namespace stopwright
