// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"
#include "Organ/Preamp.h"
#include "Sound/CardNetwork.h"
#include "Sound/OnePole.h"
#include "Sound/RailClipper.h"

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// One stage of a preamp in sound: coupling high-pass, then what its kind asks for.
///
/// An amplifier is gain, bandwidth, rails; its bandwidth is one pole at gainBandwidthHz / noiseGainOf. A follower
/// falls no further below its resting point than its standing current does in what hangs on its emitter,
/// emitterAmps (emitterOhms || loadOhms), or than its lower rail, whichever is nearer: then the transistor is off. A
/// circuit is its card's network, fed at the tap's node behind the tap's resistance, less its resting volts.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
/// Source: the follower's bound is common practice, no source
class StageVoice
{
public:
    /// `card` for a circuit, else nullptr. Fails: Error with a sentence about "its" value; PreampChain adds the names.
    StageVoice (const PreampStage& stage, const Card* card, double internalRateHz);

    /// In place, any length.
    void process (std::span<double> volts) noexcept;

    int latencySamples() const noexcept { return rails_ ? rails_->delaySamples() : 0; }

    /// Whether the output wanted to go beyond a rail since the last clearLamp.
    bool hasClipped() const noexcept { return rails_ && rails_->hasClipped(); }

    void clearLamp() noexcept;
    void reset() noexcept;

    /// What has to be the same for copyStateFrom; values may differ. Threading: [control].
    std::string make() const;

    /// Takes over capacitor volts and what is under way. A circuit takes its next sample damped (LinearCircuit), as
    /// after any change of its values.
    void copyStateFrom (const StageVoice& other) noexcept;

private:
    void processCircuit (std::span<double> volts) noexcept;

    std::optional<OnePole> coupling_;
    double gain_ = 1.0;
    std::optional<OnePole> bandwidth_;
    std::optional<RailClipper> rails_;
    std::unique_ptr<CardNetwork> circuit_;
    std::vector<int> sameStates_; ///< adoption map of a circuit like this one
};

} // namespace stopwright
