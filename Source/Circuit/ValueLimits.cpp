// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ValueLimits.h"

#include "Units/Error.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace stopwright
{

namespace
{

const ValueRange* mainRange (const PartValue& part)
{
    if (std::holds_alternative<Resistor> (part))
        return &ValueLimits::resistance;
    if (std::holds_alternative<Capacitor> (part))
        return &ValueLimits::capacitance;
    if (std::holds_alternative<Inductor> (part))
        return &ValueLimits::inductance;
    return std::holds_alternative<Potentiometer> (part) ? &ValueLimits::track : nullptr;
}

template <typename Kind>
const ValueRange* rangeIf (const PartValue& part, const ValueRange& range)
{
    return std::holds_alternative<Kind> (part) ? &range : nullptr;
}

const ValueRange* findRange (KnobKind kind, const PartValue& part)
{
    switch (kind)
    {
        case KnobKind::value:
            return mainRange (part);
        case KnobKind::position:
            return rangeIf<Potentiometer> (part, ValueLimits::position);
        case KnobKind::leakOhms:
            return rangeIf<Capacitor> (part, ValueLimits::leak);
        case KnobKind::windingOhms:
            return rangeIf<Inductor> (part, ValueLimits::winding);
        case KnobKind::selfFarads:
            return rangeIf<Inductor> (part, ValueLimits::selfCapacitance);
        case KnobKind::gainBandwidthHz:
            return rangeIf<OpAmp> (part, ValueLimits::gainBandwidth);
        case KnobKind::seriesOhms:
            return std::holds_alternative<Diode> (part) ? &ValueLimits::seriesResistance
                                                        : rangeIf<Supply> (part, ValueLimits::seriesResistance);
        case KnobKind::sourceOhms:
            return &ValueLimits::sourceResistance;
    }
    return nullptr;
}

} // namespace

bool ValueRange::contains (double value) const noexcept
{
    if (zeroMeansNone && value == 0.0)
        return true;
    if (infinityMeansNone && std::isinf (value) && value > 0.0)
        return true;
    return value >= lowest && value <= highest;
}

double ValueRange::clamp (double value) const noexcept
{
    if (std::isnan (value))
        return lowest;
    return contains (value) ? value : std::clamp (value, lowest, highest);
}

const ValueRange& rangeOf (KnobKind kind, const PartValue& part)
{
    if (const auto* range = findRange (kind, part))
        return *range;
    throw Error ("A part of kind " + std::string (kindName (part))
                 + " has no such number to turn; pick one of its own.");
}

} // namespace stopwright
