// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/StageVoice.h"

#include "Study/StageLimits.h"
#include "Units/Engineering.h"
#include "Units/Error.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

void requirePositive (double value, Quantity quantity, const std::string& what)
{
    if (! (value > 0.0) || ! std::isfinite (value))
        throw Error ("its " + what + " of " + formatForReading (value, quantity)
                     + " cannot be; give a positive value.");
}

OnePole couplingOf (const Coupling& coupling, double rateHz)
{
    requirePositive (coupling.farads, Quantity::capacitance, "coupling capacitor");
    requirePositive (coupling.inputOhms, Quantity::resistance, "input resistance");
    return { 1.0 / (2.0 * std::numbers::pi * coupling.farads * coupling.inputOhms), rateHz };
}

OnePole bandwidthOf (const PreampStage& stage, double rateHz)
{
    requirePositive (*stage.gainBandwidthHz, Quantity::frequency, "gain-bandwidth product");
    return { *stage.gainBandwidthHz / noiseGainOf (stage), rateHz };
}

std::optional<SupplyRails> railsOf (const PreampStage& stage)
{
    if (stage.kind == StageKind::circuit || (stage.kind == StageKind::amplifier && ! stage.rails))
        return {};
    const SupplyRails rails = stage.rails.value_or (noLimits);
    if (! (rails.low < 0.0 && rails.high > 0.0))
        throw Error ("its rails of " + formatForReading (rails.low, Quantity::voltage) + " and "
                     + formatForReading (rails.high, Quantity::voltage)
                     + " cannot be; give one below 0 V and one above, re the resting point.");
    if (stage.kind == StageKind::follower)
    {
        requirePositive (stage.emitterAmps, Quantity::current, "standing current");
        requirePositive (stage.emitterOhms, Quantity::resistance, "emitter resistance");
        requirePositive (stage.loadOhms, Quantity::resistance, "load");
    }
    return limitsOf (stage);
}

} // namespace

StageVoice::StageVoice (const PreampStage& stage, const Card* card, double internalRateHz)
{
    if (stage.coupling)
        coupling_ = couplingOf (*stage.coupling, internalRateHz);
    if (const auto rails = railsOf (stage))
        rails_.emplace (*rails, internalRateHz);

    if (stage.kind == StageKind::amplifier)
    {
        if (! std::isfinite (stage.gain))
            throw Error ("its gain is no number; give one.");
        gain_ = stage.gain;
        if (stage.gainBandwidthHz)
            bandwidth_ = bandwidthOf (stage, internalRateHz);
    }

    if (stage.kind == StageKind::circuit)
    {
        if (card == nullptr)
            throw Error ("there is no card with its network; name one that can be read.");
        if (card->taps.size() != 1)
            throw Error ("its card '" + card->name + "' has " + std::to_string (card->taps.size())
                         + " taps; give it exactly one, by which the signal comes in.");
        circuit_ = std::make_unique<CardNetwork> (netlistOf (*card), card->output, internalRateHz);
        sameStates_ = circuit_->adoptionMap (*circuit_);
    }
}

void StageVoice::process (std::span<double> volts) noexcept
{
    if (coupling_)
        coupling_->highpass (volts);
    if (gain_ != 1.0)
        for (double& sample : volts)
            sample *= gain_;
    if (bandwidth_)
        bandwidth_->lowpass (volts);
    if (rails_)
        rails_->process (volts);
    if (circuit_)
        processCircuit (volts);
}

// One by one: in blocks, the circuit's last bits would depend on where a block begins.
void StageVoice::processCircuit (std::span<double> volts) noexcept
{
    for (double& sample : volts)
    {
        const double in = sample;
        const std::array<const double*, 1> sources { &in };
        circuit_->process (sources, { &sample, 1 });
    }
}

void StageVoice::clearLamp() noexcept
{
    if (rails_)
        rails_->clearLamp();
}

void StageVoice::reset() noexcept
{
    if (coupling_)
        coupling_->reset();
    if (bandwidth_)
        bandwidth_->reset();
    if (rails_)
        rails_->reset();
    if (circuit_)
        circuit_->reset();
}

std::string StageVoice::make() const
{
    std::string make;
    make += coupling_ ? 'c' : '-';
    make += bandwidth_ ? 'b' : '-';
    make += rails_ ? std::to_string (rails_->delaySamples()) : "-";
    if (circuit_)
        make += circuit_->hasDevices() ? 'd' : 'l';
    if (circuit_)
        for (const auto& state : circuit_->stateNames())
            make += " " + state;
    return make + ";";
}

void StageVoice::copyStateFrom (const StageVoice& other) noexcept
{
    if (coupling_)
        coupling_->copyStateFrom (*other.coupling_);
    if (bandwidth_)
        bandwidth_->copyStateFrom (*other.bandwidth_);
    if (rails_)
        rails_->copyStateFrom (*other.rails_);
    if (circuit_)
        circuit_->adoptStates (*other.circuit_, sameStates_);
}

} // namespace stopwright
