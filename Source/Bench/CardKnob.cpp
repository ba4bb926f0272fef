// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/CardKnob.h"

#include "Units/Error.h"

#include <algorithm>
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

/// A pointer to the number of that kind within a part's value, or nullptr; const as the value is.
template <typename Value>
auto numberOf (Value& value, KnobKind kind) noexcept
{
    using Number = std::conditional_t<std::is_const_v<Value>, const double, double>;
    using Kind = std::remove_const_t<Value>;

    if constexpr (std::is_same_v<Kind, OpAmp>)
        return kind == KnobKind::gainBandwidthHz && value.gainBandwidthHz
                   ? static_cast<Number*> (&*value.gainBandwidthHz)
                   : nullptr;

    Number* number = nullptr;
    if constexpr (std::is_same_v<Kind, Resistor>)
        number = kind == KnobKind::value ? &value.ohms : nullptr;
    if constexpr (std::is_same_v<Kind, Capacitor>)
        number = kind == KnobKind::value ? &value.farads : kind == KnobKind::leakOhms ? &value.leakOhms : nullptr;
    if constexpr (std::is_same_v<Kind, Inductor>)
        number = kind == KnobKind::value         ? &value.henries
                 : kind == KnobKind::windingOhms ? &value.windingOhms
                 : kind == KnobKind::selfFarads  ? &value.selfFarads
                                                 : nullptr;
    if constexpr (std::is_same_v<Kind, Potentiometer>)
        number = kind == KnobKind::value ? &value.ohms : kind == KnobKind::position ? &value.position : nullptr;
    return number;
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
    else if (auto* part = findByName (card.parts, knob.name))
    {
        number = std::visit ([&] (auto& value) -> Number* { return numberOf (value, knob.kind); }, part->value);
    }

    if (number == nullptr)
        refuse (knob);
    return *number;
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
    if (std::holds_alternative<Switch> (value))
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
