// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/KnobTable.h"

#include <cmath>

namespace stopwright
{

KnobTable::KnobTable (const Netlist& netlist)
{
    for (const auto& part : netlist.parts)
        addPart (part);
    for (const auto& source : netlist.sources)
        if (source.sourceOhms > 0.0)
            add (source.name, KnobKind::sourceOhms, source.sourceOhms, ValueLimits::sourceResistance);
}

void KnobTable::add (const std::string& part, KnobKind kind, double value, const ValueRange& range)
{
    ValueRange present = range;
    present.zeroMeansNone = false;
    present.infinityMeansNone = false;
    entries_.push_back ({ { part, kind }, value, present });
}

void KnobTable::addPart (const Part& part)
{
    if (const auto* resistor = std::get_if<Resistor> (&part.value))
        add (part.name, KnobKind::value, resistor->ohms, ValueLimits::resistance);

    if (const auto* capacitor = std::get_if<Capacitor> (&part.value))
    {
        add (part.name, KnobKind::value, capacitor->farads, ValueLimits::capacitance);
        if (std::isfinite (capacitor->leakOhms))
            add (part.name, KnobKind::leakOhms, capacitor->leakOhms, ValueLimits::leak);
    }

    if (const auto* inductor = std::get_if<Inductor> (&part.value))
    {
        add (part.name, KnobKind::value, inductor->henries, ValueLimits::inductance);
        add (part.name, KnobKind::windingOhms, inductor->windingOhms, ValueLimits::winding);
        if (inductor->selfFarads > 0.0)
            add (part.name, KnobKind::selfFarads, inductor->selfFarads, ValueLimits::selfCapacitance);
    }

    if (const auto* potentiometer = std::get_if<Potentiometer> (&part.value))
    {
        add (part.name, KnobKind::value, potentiometer->ohms, ValueLimits::track);
        add (part.name, KnobKind::position, potentiometer->position, ValueLimits::position);
    }

    if (const auto* opAmp = std::get_if<OpAmp> (&part.value); opAmp != nullptr && opAmp->gainBandwidthHz)
        add (part.name, KnobKind::gainBandwidthHz, *opAmp->gainBandwidthHz, ValueLimits::gainBandwidth);

    const auto* diode = std::get_if<Diode> (&part.value);
    const auto* supply = std::get_if<Supply> (&part.value);
    const double seriesOhms = diode != nullptr ? diode->seriesOhms : supply != nullptr ? supply->seriesOhms : 0.0;
    if (seriesOhms > 0.0)
        add (part.name, KnobKind::seriesOhms, seriesOhms, ValueLimits::seriesResistance);
}

std::optional<int> KnobTable::find (std::string_view part, KnobKind kind) const
{
    for (std::size_t index = 0; index < entries_.size(); ++index)
        if (entries_[index].knob.kind == kind && entries_[index].knob.part == part)
            return static_cast<int> (index);
    return std::nullopt;
}

std::vector<double> KnobTable::values() const
{
    std::vector<double> result;
    result.reserve (entries_.size());
    for (const auto& entry : entries_)
        result.push_back (entry.value);
    return result;
}

} // namespace stopwright
