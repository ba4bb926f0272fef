// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/PartTexts.h"

#include "Units/Engineering.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <span>

namespace stopwright
{

namespace
{

std::string plain (double number)
{
    return formatEngineering (number, Quantity::number);
}

std::string ohms (double number)
{
    return formatEngineering (number, Quantity::resistance);
}

std::string farads (double number)
{
    return formatEngineering (number, Quantity::capacitance);
}

std::string withUnit (double number, Quantity quantity, const char* unit)
{
    return formatEngineering (number, quantity) + unit;
}

std::string volts (double number)
{
    return withUnit (number, Quantity::voltage, " V");
}

std::string amps (double number)
{
    return withUnit (number, Quantity::current, " A");
}

/// 0.57 times 100 is not quite 57; the twelfth digit is where that ends.
std::string percent (double share)
{
    constexpr double percentOfOne = 100.0;
    constexpr double lastDigit = 1e10;
    return plain (std::round (percentOfOne * share * lastDigit) / lastDigit) + " %";
}

std::string orNone (bool isThere, std::string text)
{
    return isThere ? std::move (text) : "none";
}

NumberTexts texts (const Resistor& resistor)
{
    return { { "", ohms (resistor.ohms) } };
}

NumberTexts texts (const Capacitor& capacitor)
{
    const bool leaks = std::isfinite (capacitor.leakOhms);
    return { { "", farads (capacitor.farads) }, { "leak", leaks ? ohms (capacitor.leakOhms) : "none" } };
}

NumberTexts texts (const Inductor& coil)
{
    return { { "", formatEngineering (coil.henries, Quantity::inductance) },
             { "winding resistance", orNone (coil.windingOhms != 0.0, ohms (coil.windingOhms)) },
             { "self-capacitance", orNone (coil.selfFarads != 0.0, farads (coil.selfFarads)) } };
}

NumberTexts texts (const Potentiometer& track)
{
    return { { "", ohms (track.ohms) },
             { "position", percent (track.position) },
             { "taper", track.taper == Taper::log ? "log" : "linear" } };
}

NumberTexts texts (const Switch& contact)
{
    return { { "", contact.closed ? "closed" : "open" } };
}

NumberTexts texts (const OpAmp& amplifier)
{
    const auto& bandwidth = amplifier.gainBandwidthHz;
    const auto& rails = amplifier.rails;
    return { { "gain-bandwidth product", bandwidth ? withUnit (*bandwidth, Quantity::frequency, " Hz") : "ideal" },
             { "open-loop gain", amplifier.openLoopDb ? plain (*amplifier.openLoopDb) + " dB" : "ideal" },
             { "rails", rails ? volts ((*rails)[0]) + " and " + volts ((*rails)[1]) : "none" } };
}

NumberTexts texts (const Diode& diode)
{
    return { { "saturation current", amps (diode.saturationAmps) },
             { "emission coefficient", plain (diode.emissionCoefficient) },
             { "series resistance", orNone (diode.seriesOhms != 0.0, ohms (diode.seriesOhms)) } };
}

NumberTexts texts (const Transistor& transistor)
{
    return { { "saturation current", amps (transistor.saturationAmps) },
             { "forward beta", plain (transistor.forwardBeta) },
             { "reverse beta", plain (transistor.reverseBeta) },
             { "leakage", orNone (transistor.leakageAmps != 0.0, amps (transistor.leakageAmps)) },
             { "Early voltage", transistor.earlyVolts ? volts (*transistor.earlyVolts) : "none" } };
}

NumberTexts texts (const Supply& supply)
{
    return { { "", volts (supply.volts) },
             { "series resistance", orNone (supply.seriesOhms != 0.0, ohms (supply.seriesOhms)) } };
}

std::string joined (std::span<const std::string> items)
{
    std::string all;
    for (const auto& item : items)
        all.append (all.empty() ? "" : ", ").append (item);
    return all;
}

std::string tauText (double tau, TauUnit unit)
{
    return unit == TauUnit::seconds ? withUnit (tau, Quantity::time, " s") : plain (tau) + " periods";
}

std::string staircaseText (const Wave& wave)
{
    std::string text = "staircase of " + std::to_string (wave.ranks) + (wave.ranks == 1 ? " rank" : " ranks");
    if (wave.weights.empty())
        return text;
    std::vector<std::string> weights;
    std::ranges::transform (wave.weights, std::back_inserter (weights), plain);
    return text + ", weights " + joined (weights);
}

bool hasDirection (const PartValue& value)
{
    return ! (std::holds_alternative<Resistor> (value) || std::holds_alternative<Capacitor> (value)
              || std::holds_alternative<Inductor> (value) || std::holds_alternative<Switch> (value));
}

} // namespace

NumberTexts textsOf (const PartValue& value)
{
    return std::visit ([] (const auto& part) { return texts (part); }, value);
}

NumberTexts textsOf (const Tap& tap)
{
    return { { "wave", waveText (tap.wave) },
             { "footage", tap.footage.text() + " ft" },
             { "level", withUnit (tap.voltsPeakToPeak, Quantity::voltage, " V peak to peak") },
             { "source resistance", orNone (tap.sourceOhms != 0.0, ohms (tap.sourceOhms)) },
             { "node", tap.node },
             { "polarity", tap.polarity < 0 ? "-1" : "+1" } };
}

std::string summaryOf (const Part& part)
{
    std::string text (kindName (part.value));
    const auto numbers = textsOf (part.value);
    return numbers.front().label.empty() ? text + " " + numbers.front().text : text;
}

std::string summaryOf (const Tap& tap)
{
    return waveText (tap.wave) + " " + tap.footage.text() + " ft";
}

std::string waveText (const Wave& wave)
{
    constexpr double evenDuty = 0.5;
    std::string name (waveName (wave.kind));
    switch (wave.kind)
    {
        case WaveKind::square:
            return wave.duty == evenDuty ? name : name + ", duty " + plain (wave.duty);
        case WaveKind::pulse:
            return name + ", duty " + plain (wave.duty);
        case WaveKind::staircase:
            return staircaseText (wave);
        case WaveKind::rounded:
            return name + ", rise " + tauText (wave.riseTau, wave.tauUnit) + ", fall "
                   + tauText (wave.fallTau, wave.tauUnit);
        case WaveKind::outphased:
            return name + " by " + plain (wave.outphaseWeight);
        case WaveKind::triangle:
        case WaveKind::sawtooth:
            break;
    }
    return name;
}

std::string leadsText (const Part& part)
{
    return joined (part.nodes);
}

std::string toleranceText (const Part& part)
{
    return orNone (part.tolerance != 0.0, percent (part.tolerance));
}

bool joinsTheSame (const Part& a, const Part& b)
{
    if (a.value.index() == b.value.index() && ! hasDirection (a.value))
        return std::ranges::is_permutation (a.nodes, b.nodes);
    return a.nodes == b.nodes;
}

} // namespace stopwright
