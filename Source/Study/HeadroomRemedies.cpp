// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/HeadroomRemedies.h"

#include "Study/WaveMaker.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numbers>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;
using Kind = HeadroomRemedy::Kind;
using Response = ResponseCurve::Response;

constexpr double referenceHz = 1000.0; ///< where a source's impedance is read for a first guess

/// What a stage gives, re what it gave, when its level is brought down by about 1 / times.
using Softening = std::function<Response (double times)>;

double roomAfter (const RemedyCase& wish, const Response& change)
{
    double lowest = 0.0;
    double highest = 0.0;
    for (const auto& wave : wish.spectra.through (change).waves (wish.waveMaker))
    {
        const auto [low, high] = std::ranges::minmax_element (wave);
        lowest += *low;
        highest += *high;
    }
    return peakRoomDb (lowest, highest, wish.found.limits);
}

/// Twice as soft leaves 6 dB more, but for bandwidths and corners that move: a few steps of the secant method settle that.
std::optional<double> searched (const RemedyCase& wish, const Softening& softened)
{
    constexpr int mostSteps = 20;
    constexpr double goodEnoughDb = 1e-4;
    double slope = 1.0; // dB of room for each dB softer, near 1
    double softerDb = wish.marginDb - wish.found.roomDb;
    std::optional<double> lastStepDb;
    double lastMissingDb = 0.0;
    for (int step = 0; step < mostSteps; ++step)
    {
        if (wish.isUnwanted && wish.isUnwanted())
            return {};
        const double missingDb = wish.marginDb - roomAfter (wish, softened (fromDecibels (softerDb)));
        if (std::abs (missingDb) < goodEnoughDb)
            return fromDecibels (softerDb);
        if (lastStepDb)
            slope = std::clamp ((lastMissingDb - missingDb) / *lastStepDb, 0.5, 2.0);
        lastStepDb = missingDb / slope;
        lastMissingDb = missingDb;
        softerDb += *lastStepDb;
    }
    return {};
}

/// (j f / GBW) N: what an amplifier of noise gain N falls short of its gain by, 1 / (1 + that).
Complex shortfall (const PreampStage& stage, double noiseGain, double hz)
{
    return stage.gainBandwidthHz ? Complex { 0.0, hz / *stage.gainBandwidthHz * noiseGain } : Complex {};
}

std::optional<HeadroomRemedy> lessGain (const RemedyCase& wish, const PreampStage& stage)
{
    const auto times = searched (wish,
                                 [&stage] (double softer) -> Response
                                 {
                                     PreampStage changed = stage;
                                     changed.gain /= softer;
                                     return [=] (double hz)
                                     {
                                         return (1.0 + shortfall (stage, noiseGainOf (stage), hz))
                                                / (1.0 + shortfall (changed, noiseGainOf (changed), hz)) / softer;
                                     };
                                 });
    if (! times)
        return {};
    return HeadroomRemedy { Kind::gain, stage.gain, stage.gain / *times };
}

std::optional<HeadroomRemedy>
    seriesResistor (const RemedyCase& wish, const PreampStage& stage, const Response& sourceOhms)
{
    const auto [farads, inputOhms] = *stage.coupling;
    const double whole = inputOhms + std::abs (sourceOhms (referenceHz));
    const auto seriesOf = [whole] (double times) { return whole * (times - 1.0); };
    const auto softened = [&, farads = farads, inputOhms = inputOhms] (double times) -> Response
    {
        const double series = seriesOf (times);
        const double noiseGain = noiseGainOf (stage);
        const double noiseGainThen =
            stage.gain < 0.0 ? 1.0 + (noiseGain - 1.0) * inputOhms / (inputOhms + series) : noiseGain;
        return [=, &stage, &sourceOhms] (double hz)
        {
            const Complex capacitor = 1.0 / Complex (0.0, 2.0 * std::numbers::pi * hz * farads);
            const Complex undivided = inputOhms + sourceOhms (hz);
            const Complex before = inputOhms / (inputOhms + capacitor);
            const Complex behind = undivided / (undivided + series + capacitor);
            return behind / before * (1.0 + shortfall (stage, noiseGain, hz))
                   / (1.0 + shortfall (stage, noiseGainThen, hz));
        };
    };
    const auto times = searched (wish, softened);
    if (! times || *times <= 1.0)
        return {};
    return HeadroomRemedy { Kind::seriesOhms, 0.0, seriesOf (*times) };
}

/// The current that sinks what the stage needs, when its rails leave room for that.
std::optional<HeadroomRemedy> strongerCurrent (const RemedyCase& wish, const PreampStage& stage)
{
    constexpr double unlimited = std::numeric_limits<double>::infinity();
    const double spare = fromDecibels (wish.marginDb);
    const SupplyRails rails = stage.rails.value_or (SupplyRails { -unlimited, unlimited });
    const double needed = -wish.found.lowestVolts * spare;
    if (needed > -rails.low || wish.found.highestVolts * spare > rails.high)
        return {};
    return HeadroomRemedy { Kind::emitterAmps, stage.emitterAmps,
                            needed / sinkVolts (1.0, stage.emitterOhms, stage.loadOhms) };
}

} // namespace

// Virtual earth: what is heard of a current is -A / (Y + (1 + A) / Rf), A = GBW / jf (see RailStudy::busOhms).
std::vector<HeadroomRemedy> remediesFor (const RemedyCase& wish, const MixingBus& bus, const Response& siemens)
{
    if (wish.found.roomDb >= wish.marginDb)
        return {};
    const auto times = searched (wish,
                                 [&] (double softer) -> Response
                                 {
                                     return [&bus, &siemens, softer] (double hz) -> Complex
                                     {
                                         if (! bus.gainBandwidthHz)
                                             return 1.0 / softer;
                                         const Complex fed = 1.0 + *bus.gainBandwidthHz / Complex { 0.0, hz };
                                         const Complex earth = bus.feedbackOhms * siemens (hz);
                                         return (earth + fed) / (earth + softer * fed);
                                     };
                                 });
    if (! times)
        return {};
    return { { Kind::feedbackOhms, bus.feedbackOhms, bus.feedbackOhms / *times } };
}

std::vector<HeadroomRemedy> remediesFor (const RemedyCase& wish, const PreampStage& stage, const Response& sourceOhms)
{
    if (wish.found.roomDb >= wish.marginDb)
        return {};
    std::vector<HeadroomRemedy> remedies;
    const auto add = [&remedies] (const std::optional<HeadroomRemedy>& remedy)
    {
        if (remedy)
            remedies.push_back (*remedy);
    };
    if (stage.kind == StageKind::amplifier)
        add (lessGain (wish, stage));
    if (stage.coupling)
        add (seriesResistor (wish, stage, sourceOhms));
    if (stage.kind == StageKind::follower)
        add (strongerCurrent (wish, stage));
    return remedies;
}

} // namespace stopwright
