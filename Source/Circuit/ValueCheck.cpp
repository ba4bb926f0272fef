// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ValueCheck.h"

#include "Circuit/FindingWords.h"
#include "Circuit/ValueLimits.h"

namespace stopwright
{

namespace
{

/// The values of one part or tap, judged one after the other.
class ValueJudge
{
public:
    ValueJudge (std::string_view name, FindingList& findings) : name_ (name), findings_ (findings) {}

    void judge (double value, const ValueRange& range)
    {
        if (range.contains (value))
            return;
        const auto read = [&range] (double number) { return formatForReading (number, range.quantity); };
        std::string remedy = "give it " + read (range.lowest) + " to " + read (range.highest);
        if (range.zeroMeansNone)
            remedy += ", or 0 for none";
        if (range.infinityMeansNone)
            remedy += ", or leave it out";
        findings_.addError (name_, "The " + std::string (range.what) + " of " + partWords (name_) + " is "
                                       + read (value) + "; " + remedy + ".");
    }

    void judge (const Resistor& resistor) { judge (resistor.ohms, ValueLimits::resistance); }

    void judge (const Capacitor& capacitor)
    {
        judge (capacitor.farads, ValueLimits::capacitance);
        judge (capacitor.leakOhms, ValueLimits::leak);
    }

    void judge (const Inductor& inductor)
    {
        judge (inductor.henries, ValueLimits::inductance);
        judge (inductor.windingOhms, ValueLimits::winding);
        judge (inductor.selfFarads, ValueLimits::selfCapacitance);
    }

    void judge (const Potentiometer& potentiometer)
    {
        judge (potentiometer.ohms, ValueLimits::track);
        judge (potentiometer.position, ValueLimits::position);
    }

    void judge (const Switch&) {}

    void judge (const OpAmp& amplifier)
    {
        if (amplifier.gainBandwidthHz)
            judge (*amplifier.gainBandwidthHz, ValueLimits::gainBandwidth);
        if (amplifier.openLoopDb)
            judge (*amplifier.openLoopDb, ValueLimits::openLoopDb);
        if (! amplifier.rails)
            return;
        const auto [low, high] = *amplifier.rails;
        judge (low, ValueLimits::rail);
        judge (high, ValueLimits::rail);
        if (low >= high)
            findings_.addError (
                name_, partWords (name_) + " has rails from " + formatForReading (low, Quantity::voltage) + " to "
                           + formatForReading (high, Quantity::voltage) + "; give the lower one first.");
    }

    void judge (const Diode& diode)
    {
        judge (diode.saturationAmps, ValueLimits::saturation);
        judge (diode.emissionCoefficient, ValueLimits::emission);
        judge (diode.seriesOhms, ValueLimits::seriesResistance);
    }

    void judge (const Transistor& transistor)
    {
        judge (transistor.saturationAmps, ValueLimits::saturation);
        judge (transistor.forwardBeta, ValueLimits::forwardBeta);
        judge (transistor.reverseBeta, ValueLimits::reverseBeta);
        judge (transistor.leakageAmps, ValueLimits::leakage);
        if (transistor.earlyVolts)
            judge (*transistor.earlyVolts, ValueLimits::early);
    }

    void judge (const Supply& supply)
    {
        judge (supply.volts, ValueLimits::supplyVolts);
        judge (supply.seriesOhms, ValueLimits::seriesResistance);
    }

private:
    std::string_view name_;
    FindingList& findings_;
};

} // namespace

void checkValues (const Netlist& netlist, FindingList& findings)
{
    for (const auto& source : netlist.sources)
        ValueJudge (source.name, findings).judge (source.sourceOhms, ValueLimits::sourceResistance);
    for (const auto& part : netlist.parts)
    {
        ValueJudge judge (part.name, findings);
        std::visit ([&judge] (const auto& value) { judge.judge (value); }, part.value);
        judge.judge (part.tolerance, ValueLimits::tolerance);
    }
}

} // namespace stopwright
