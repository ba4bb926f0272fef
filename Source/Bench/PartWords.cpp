// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/PartWords.h"

#include "Units/Engineering.h"

namespace stopwright
{

namespace
{

juce::String lessonOf (const Resistor&, KnobKind)
{
    return "Resistor: in the path of the signal it sets the loss and, with a capacitor or coil, the corner; across the "
           "signal it loads and damps.";
}

juce::String lessonOf (const Capacitor&, KnobKind)
{
    return "Capacitor: passes the upper partials more easily than the lower. In series it thins the bass, across the "
           "signal it darkens; with a coil it makes a resonance.";
}

juce::String lessonOf (const Inductor&, KnobKind kind)
{
    if (kind == KnobKind::windingOhms)
        return "Winding resistance: the loss of the coil's wire. More of it makes the resonance flatter (lower Q).";
    return "Coil: with a capacitor it makes the resonance that gives a reed its formant, a peak that stays at one "
           "frequency whatever key is played.";
}

juce::String lessonOf (const Potentiometer&, KnobKind kind)
{
    return kind == KnobKind::position
               ? "Potentiometer: where its wiper stands, from 0 % at the bottom end to 100 % at the top."
               : "Track: the whole resistance of the potentiometer from end to end.";
}

juce::String lessonOf (const OpAmp&, KnobKind)
{
    return "Gain-bandwidth product: how fast the amplifier is. A slow one lowers and flattens a resonance at high "
           "frequencies.";
}

juce::String seriesLesson()
{
    return "Series resistance: what the current meets besides; more of it rounds the corner.";
}

juce::String lessonOf (const Diode&, KnobKind)
{
    return seriesLesson();
}

juce::String lessonOf (const Transistor&, KnobKind)
{
    return "Transistor: lends current, so that what follows does not load what comes before, or makes it louder. Its "
           "bias decides how far a signal may go before it is cut.";
}

juce::String lessonOf (const Supply&, KnobKind)
{
    return seriesLesson();
}

juce::String lessonOf (const Switch&, KnobKind)
{
    return PartWords::switchLesson();
}

} // namespace

juce::String PartWords::title (const CardKnob& knob)
{
    return juce::String::fromUTF8 (knob.name.c_str());
}

juce::String PartWords::number (KnobKind kind, CardKnob::Place place)
{
    if (place == CardKnob::Place::tapLevel)
        return "level";
    if (place == CardKnob::Place::mixing)
        return "mixing resistor";
    if (place == CardKnob::Place::tremulantRate)
        return "rate";
    if (place == CardKnob::Place::tremulantDepth)
        return "depth";
    switch (kind)
    {
        case KnobKind::value:
            return "value";
        case KnobKind::position:
            return "position";
        case KnobKind::leakOhms:
            return "leak";
        case KnobKind::windingOhms:
            return "winding resistance";
        case KnobKind::selfFarads:
            return "self-capacitance";
        case KnobKind::gainBandwidthHz:
            return "gain-bandwidth product";
        case KnobKind::seriesOhms:
            return "series resistance";
        case KnobKind::sourceOhms:
            return "source resistance";
    }
    return "value";
}

juce::String PartWords::lesson (const Card& card, const CardKnob& knob)
{
    if (knob.place == CardKnob::Place::tapLevel)
        return "Tap: a keyed bus this stop takes its wave from. The level is volts peak to peak of that wave, as an "
               "oscilloscope shows it; of a staircase that of its first square alone, of a rounded wave that of the square "
               "it was rounded from.";
    if (knob.place == CardKnob::Place::mixing)
        return "Mixing resistor: from the card's output to the bus where stops meet. The lower, the louder this stop; on a "
               "passive bus it also loads its neighbours. It belongs to the tablet and is saved with the instrument.";
    if (knob.place == CardKnob::Place::tremulantRate)
        return "Rate: how many times a second the tremulant swings the level; six or so is usual. It belongs to the outlet "
               "and is saved with the instrument.";
    if (knob.place == CardKnob::Place::tremulantDepth)
        return "Depth: how far the tremulant swings the level up and down; 30 % is 5.4 dB from trough to peak. It belongs "
               "to the outlet and is saved with the instrument.";
    const auto* part = findPart (card, knob.name);
    if (part == nullptr)
        return {};
    return std::visit ([&] (const auto& value) { return lessonOf (value, knob.kind); }, part->value);
}

juce::String PartWords::lesson (const PartValue& value)
{
    if (std::holds_alternative<OpAmp> (value))
        return "An ideal amplifier: without limits, so there is nothing to turn. Give it a gain-bandwidth product in the "
               "card to see what a real one does.";
    if (std::holds_alternative<Diode> (value))
        return "Diode: passes current one way, from about half a volt on if it is of silicon. It cuts the tops off a wave "
               "and so adds partials.";
    if (std::holds_alternative<Supply> (value))
        return "Supply: the volts that transistors live on. Their outputs cannot leave its bounds.";
    return std::visit ([] (const auto& part) { return lessonOf (part, KnobKind::value); }, value);
}

juce::String PartWords::standing (const PartValue& value)
{
    if (std::holds_alternative<OpAmp> (value))
        return "ideal";
    if (const auto* supply = std::get_if<Supply> (&value))
        return juce::String (formatForReading (supply->volts, Quantity::voltage));
    if (transistorIn (value) != nullptr)
        return std::holds_alternative<Npn> (value) ? "npn" : "pnp";
    const auto kind = kindName (value);
    return { kind.data(), kind.size() };
}

juce::String PartWords::leadName (const PartValue& value, std::size_t lead)
{
    const auto pick = [lead] (std::initializer_list<const char*> names)
    { return lead < names.size() ? juce::String (*(names.begin() + lead)) : juce::String(); };
    if (std::holds_alternative<Potentiometer> (value))
        return pick ({ "top", "wiper", "bottom" });
    if (std::holds_alternative<OpAmp> (value))
        return pick ({ "plus in", "minus in", "out" });
    if (std::holds_alternative<Diode> (value))
        return pick ({ "anode", "cathode" });
    if (std::holds_alternative<Supply> (value))
        return pick ({ "plus", "minus" });
    if (transistorIn (value) != nullptr)
        return pick ({ "collector", "base", "emitter" });
    return "lead " + juce::String (static_cast<int> (lead) + 1);
}

juce::String PartWords::handling (CardKnob::Place place)
{
    const bool isRate = place == CardKnob::Place::tremulantRate;
    const bool isEven = isRate || place == CardKnob::Place::tremulantDepth;
    return juce::String ("Drag the ring up or down, turn the wheel on it or use the arrow keys to step")
           + (isEven ? "" : " through the series") + "; hold Shift to move without steps. Type a value such as "
           + (isRate   ? "6.5"
              : isEven ? "40 %"
                       : "4k7")
           + ". Double-click (or Home): back to the saved value.";
}

juce::String PartWords::switchLesson()
{
    return "Switch: click, or press Space, to open or close it.";
}

juce::String PartWords::tapLine (const Tap& tap)
{
    juce::String line (waveName (tap.wave.kind).data(), waveName (tap.wave.kind).size());
    return line + " " + juce::String (tap.footage.text()) + "'";
}

juce::String PartWords::heading (const PartValue& value)
{
    static const juce::StringArray headings { "RESISTORS",       "CAPACITORS", "COILS",  "POTENTIOMETERS",
                                              "SWITCHES",        "AMPLIFIERS", "DIODES", "NPN TRANSISTORS",
                                              "PNP TRANSISTORS", "SUPPLIES" };
    return headings[static_cast<int> (value.index())];
}

} // namespace stopwright
