// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/PartFields.h"

#include "Circuit/FindingWords.h"
#include "Organ/DocumentFields.h"

#include <array>
#include <cmath>
#include <cstddef>

namespace stopwright
{

namespace
{

/// In the order of PartValue, like the two tables after it.
constexpr std::size_t kindCount = std::variant_size_v<PartValue>;
constexpr std::array<std::string_view, kindCount> kindWords { "resistor", "capacitor", "inductor", "potentiometer",
                                                              "switch",   "opamp",     "diode",    "npn",
                                                              "pnp",      "supply" };
constexpr std::array<std::string_view, kindCount> leadWords { "its two ends",
                                                              "its two ends",
                                                              "its two ends",
                                                              "top, wiper and bottom",
                                                              "its two contacts",
                                                              "plus input, minus input and output",
                                                              "anode and cathode",
                                                              "collector, base and emitter",
                                                              "collector, base and emitter",
                                                              "plus and minus" };
constexpr std::array<std::string_view, 2> taperWords { "linear", "log" };

PartValue emptyValue (std::size_t kind)
{
    static const std::array<PartValue, kindCount> values { Resistor(), Capacitor(), Inductor(), Potentiometer(),
                                                           Switch(),   OpAmp(),     Diode(),    Npn(),
                                                           Pnp(),      Supply() };
    return values[kind];
}

void read (FieldReader& fields, Resistor& resistor)
{
    resistor.ohms = fields.quantity ("value", ValueLimits::resistance);
}

void read (FieldReader& fields, Capacitor& capacitor)
{
    capacitor.farads = fields.quantity ("value", ValueLimits::capacitance);
    capacitor.leakOhms = fields.quantity ("leakOhms", ValueLimits::leak, capacitor.leakOhms);
}

void read (FieldReader& fields, Inductor& inductor)
{
    inductor.henries = fields.quantity ("value", ValueLimits::inductance);
    inductor.windingOhms = fields.quantity ("windingOhms", ValueLimits::winding, inductor.windingOhms);
    inductor.selfFarads = fields.quantity ("selfFarads", ValueLimits::selfCapacitance, inductor.selfFarads);
}

void read (FieldReader& fields, Potentiometer& potentiometer)
{
    potentiometer.ohms = fields.quantity ("value", ValueLimits::track);
    potentiometer.position = fields.quantity ("position", ValueLimits::position, potentiometer.position);
    potentiometer.taper = static_cast<Taper> (fields.choice ("taper", taperWords, 0));
}

void read (FieldReader& fields, Switch& contact)
{
    contact.closed = fields.flag ("closed", contact.closed);
}

void read (FieldReader& fields, OpAmp& amplifier)
{
    if (fields.has ("gainBandwidthHz"))
        amplifier.gainBandwidthHz = fields.quantity ("gainBandwidthHz", ValueLimits::gainBandwidth);
    if (fields.has ("openLoopDb"))
        amplifier.openLoopDb = fields.quantity ("openLoopDb", ValueLimits::openLoopDb);
    if (! fields.has ("rails"))
        return;
    const auto rails = fields.quantities ("rails", ValueLimits::rail, 2, 2);
    if (rails[0] >= rails[1])
        fields.refuse ("rails", "the lower rail comes first: [low, high].");
    amplifier.rails = { rails[0], rails[1] };
}

void read (FieldReader& fields, Diode& diode)
{
    diode.saturationAmps = fields.quantity ("saturationAmps", ValueLimits::saturation);
    diode.emissionCoefficient =
        fields.quantity ("emissionCoefficient", ValueLimits::emission, diode.emissionCoefficient);
    diode.seriesOhms = fields.quantity ("seriesOhms", ValueLimits::seriesResistance, diode.seriesOhms);
}

void read (FieldReader& fields, Transistor& transistor)
{
    transistor.saturationAmps = fields.quantity ("saturationAmps", ValueLimits::saturation);
    transistor.forwardBeta = fields.quantity ("forwardBeta", ValueLimits::forwardBeta);
    transistor.reverseBeta = fields.quantity ("reverseBeta", ValueLimits::reverseBeta, transistor.reverseBeta);
    transistor.leakageAmps = fields.quantity ("leakageAmps", ValueLimits::leakage, transistor.leakageAmps);
    if (fields.has ("earlyVolts"))
        transistor.earlyVolts = fields.quantity ("earlyVolts", ValueLimits::early);
}

void read (FieldReader& fields, Supply& supply)
{
    supply.volts = fields.quantity ("volts", ValueLimits::supplyVolts);
    supply.seriesOhms = fields.quantity ("seriesOhms", ValueLimits::seriesResistance, supply.seriesOhms);
}

void write (const Resistor& resistor, JsonTree& tree)
{
    tree["value"] = quantityTree (resistor.ohms, Quantity::resistance);
}

void write (const Capacitor& capacitor, JsonTree& tree)
{
    tree["value"] = quantityTree (capacitor.farads, Quantity::capacitance);
    if (std::isfinite (capacitor.leakOhms))
        tree["leakOhms"] = quantityTree (capacitor.leakOhms, Quantity::resistance);
}

void write (const Inductor& inductor, JsonTree& tree)
{
    tree["value"] = quantityTree (inductor.henries, Quantity::inductance);
    if (inductor.windingOhms != 0.0)
        tree["windingOhms"] = quantityTree (inductor.windingOhms, Quantity::resistance);
    if (inductor.selfFarads != 0.0)
        tree["selfFarads"] = quantityTree (inductor.selfFarads, Quantity::capacitance);
}

void write (const Potentiometer& potentiometer, JsonTree& tree)
{
    tree["value"] = quantityTree (potentiometer.ohms, Quantity::resistance);
    tree["position"] = numberTree (potentiometer.position);
    tree["taper"] = taperWords[static_cast<std::size_t> (potentiometer.taper)];
}

void write (const Switch& contact, JsonTree& tree)
{
    tree["closed"] = contact.closed;
}

void write (const OpAmp& amplifier, JsonTree& tree)
{
    if (amplifier.gainBandwidthHz)
        tree["gainBandwidthHz"] = quantityTree (*amplifier.gainBandwidthHz, Quantity::frequency);
    if (amplifier.openLoopDb)
        tree["openLoopDb"] = numberTree (*amplifier.openLoopDb);
    if (amplifier.rails)
        tree["rails"] = numbersTree (*amplifier.rails);
}

void writeSeries (double seriesOhms, JsonTree& tree)
{
    if (seriesOhms != 0.0)
        tree["seriesOhms"] = quantityTree (seriesOhms, Quantity::resistance);
}

void write (const Diode& diode, JsonTree& tree)
{
    tree["saturationAmps"] = quantityTree (diode.saturationAmps, Quantity::current);
    tree["emissionCoefficient"] = numberTree (diode.emissionCoefficient);
    writeSeries (diode.seriesOhms, tree);
}

void write (const Transistor& transistor, JsonTree& tree)
{
    tree["saturationAmps"] = quantityTree (transistor.saturationAmps, Quantity::current);
    tree["forwardBeta"] = numberTree (transistor.forwardBeta);
    tree["reverseBeta"] = numberTree (transistor.reverseBeta);
    if (transistor.leakageAmps != 0.0)
        tree["leakageAmps"] = quantityTree (transistor.leakageAmps, Quantity::current);
    if (transistor.earlyVolts)
        tree["earlyVolts"] = numberTree (*transistor.earlyVolts);
}

void write (const Supply& supply, JsonTree& tree)
{
    tree["volts"] = numberTree (supply.volts);
    writeSeries (supply.seriesOhms, tree);
}

} // namespace

Part readPart (FieldReader& fields)
{
    Part part;
    part.name = fields.name ("name");
    fields.setLabel ("part " + partWords (part.name));

    const auto kind = fields.choice ("kind", kindWords);
    part.value = emptyValue (kind);
    part.nodes = fields.names ("nodes", leadCount (part.value), leadWords[kind]);
    std::visit ([&fields] (auto& value) { read (fields, value); }, part.value);
    part.tolerance = fields.quantity ("tolerance", ValueLimits::tolerance, part.tolerance);
    return part;
}

JsonTree partTree (const Part& part)
{
    JsonTree tree { { "name", part.name }, { "kind", kindWords[part.value.index()] }, { "nodes", part.nodes } };
    std::visit ([&tree] (const auto& value) { write (value, tree); }, part.value);
    if (part.tolerance != 0.0)
        tree["tolerance"] = numberTree (part.tolerance);
    return tree;
}

} // namespace stopwright
