// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/PartTerms.h"

namespace stopwright
{

namespace
{

juce::String termOf (const Resistor&)
{
    return "resistor";
}

juce::String termOf (const Capacitor&)
{
    return "capacitor";
}

juce::String termOf (const Inductor&)
{
    return "coil";
}

juce::String termOf (const Potentiometer&)
{
    return "potentiometer";
}

juce::String termOf (const Switch&)
{
    return "switch";
}

juce::String termOf (const OpAmp&)
{
    return "op-amp";
}

juce::String termOf (const Diode&)
{
    return "diode";
}

juce::String termOf (const Transistor&)
{
    return "transistor";
}

juce::String termOf (const Supply&)
{
    return "supply rail";
}

} // namespace

juce::String partTerm (const PartValue& value)
{
    return std::visit ([] (const auto& part) { return termOf (part); }, value);
}

juce::String knobTerm (const Card& card, const CardKnob& knob)
{
    if (knob.place == CardKnob::Place::tapLevel)
        return "tap";
    if (knob.place == CardKnob::Place::mixing)
        return "mixing resistor";
    if (knob.isInInstrument())
        return "tremulant";
    switch (knob.kind)
    {
        case KnobKind::windingOhms:
            return "winding";
        case KnobKind::selfFarads:
            return "self-capacitance";
        case KnobKind::leakOhms:
            return "leak";
        case KnobKind::gainBandwidthHz:
            return "gain-bandwidth product";
        case KnobKind::sourceOhms:
            return "source";
        case KnobKind::value:
        case KnobKind::position:
        case KnobKind::seriesOhms:
            break;
    }
    const auto* const part = findPart (card, knob.name);
    return part != nullptr ? partTerm (part->value) : juce::String();
}

} // namespace stopwright
