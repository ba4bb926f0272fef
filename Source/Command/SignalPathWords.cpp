// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/SignalPathWords.h"

#include "Command/NumberText.h"
#include "Organ/PlainText.h"
#include "Units/Decibels.h"
#include "Units/Engineering.h"

#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

std::string ohms (double value)
{
    return formatForReading (value, Quantity::resistance);
}

std::string bandwidthWords (const std::optional<double>& gainBandwidthHz)
{
    return gainBandwidthHz ? ", gain-bandwidth product " + formatForReading (*gainBandwidthHz, Quantity::frequency)
                           : ", ideal";
}

std::string railWords (const std::optional<SupplyRails>& rails)
{
    return rails ? ", " + numberText (rails->low) + " to +" + numberText (rails->high) + " V" : ", no rails";
}

std::string couplingWords (const Coupling& coupling)
{
    const double cornerHz = 1.0 / (2.0 * std::numbers::pi * coupling.inputOhms * coupling.farads);
    return ", " + formatForReading (coupling.farads, Quantity::capacitance) + " into " + ohms (coupling.inputOhms)
           + " (" + formatForReading (cornerHz, Quantity::frequency) + ")";
}

std::string amplifierWords (const PreampStage& stage)
{
    const auto decibels =
        stage.gain == 0.0 ? std::string() : " (" + fixedNumber (toDecibels (std::abs (stage.gain)), 1) + " dB)";
    return ", gain " + numberText (stage.gain) + decibels + bandwidthWords (stage.gainBandwidthHz)
           + railWords (stage.rails);
}

std::string followerWords (const PreampStage& stage)
{
    const double parallel = stage.emitterOhms * stage.loadOhms / (stage.emitterOhms + stage.loadOhms);
    return ", " + formatForReading (stage.emitterAmps, Quantity::current) + " in " + ohms (stage.emitterOhms)
           + ", drives " + ohms (stage.loadOhms) + " and sinks to "
           + formatForReading (-stage.emitterAmps * parallel, Quantity::voltage) + railWords (stage.rails);
}

std::string rotorWords (const std::string& name, const RotorSettings& rotor)
{
    return ", " + name + " " + numberText (rotor.slowRpm) + " or " + numberText (rotor.fastRpm) + " turns per minute";
}

std::string kindWords (const Outlet& outlet)
{
    constexpr int digits = 2;
    const double swing = (1.0 + outlet.tremulant.depth) / (1.0 - outlet.tremulant.depth);
    switch (outlet.kind)
    {
        case OutletKind::main:
            break;
        case OutletKind::tremulant:
            return "tremulant of " + formatForReading (outlet.tremulant.rateHz, Quantity::frequency) + ", depth "
                   + numberText (outlet.tremulant.depth) + " (" + fixedNumber (toDecibels (swing), digits)
                   + " dB from peak to peak), " + (outlet.isOn ? "on" : "off");
        case OutletKind::rotary:
            return "rotary speaker, crossover " + formatForReading (outlet.rotary.crossoverHz, Quantity::frequency)
                   + rotorWords ("horn", outlet.rotary.horn) + rotorWords ("drum", outlet.rotary.drum) + ", "
                   + (outlet.isOn ? "fast" : "slow");
    }
    return "as it comes";
}

} // namespace

std::string mixingBusWords (const MixingBus& bus)
{
    if (bus.kind == BusKind::virtualEarth)
        return bus.name + ": virtual earth, feedback " + ohms (bus.feedbackOhms) + bandwidthWords (bus.gainBandwidthHz)
               + railWords (bus.rails);
    return bus.name + ": passive, " + ohms (bus.loadOhms)
           + (bus.loadFarads == 0.0 ? "" : " and " + formatForReading (bus.loadFarads, Quantity::capacitance))
           + " to common";
}

std::string stageWords (const PreampStage& stage)
{
    const auto coupling = stage.coupling ? couplingWords (*stage.coupling) : std::string();
    switch (stage.kind)
    {
        case StageKind::amplifier:
            return stage.name + ": amplifier" + coupling + amplifierWords (stage);
        case StageKind::follower:
            return stage.name + ": follower" + coupling + followerWords (stage);
        case StageKind::circuit:
            break;
    }
    return stage.name + ": circuit " + stage.cardFile + coupling;
}

std::string outletWords (const Outlet& outlet)
{
    return outlet.name + ": " + kindWords (outlet)
           + (outlet.swell ? ", swell down to " + numberText (outlet.swellFloorDb) + " dB" : ", no swell");
}

} // namespace stopwright
