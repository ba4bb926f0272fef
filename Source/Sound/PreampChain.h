// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"
#include "Organ/Preamp.h"
#include "Sound/StageVoice.h"

#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// A preamp in sound: its stages one after another, in volts, at the internal rate.
///
/// The output does not depend on how the stream is cut into blocks, to the last bit.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class PreampChain
{
public:
    /// `cards` are the networks of the circuit stages, in the order of the stages; they are not kept.
    /// Units/range: internalRateHz >= 100 kHz, samples per second.
    /// Fails: Error with a sentence that names preamp and stage when a value cannot be, a card is missing or one too
    /// many, a card has not exactly one tap, or its network is not sound.
    PreampChain (const Preamp& preamp,
                 double internalRateHz,
                 std::span<const std::reference_wrapper<const Card>> cards = {});

    /// In place, any length. A sample that is not finite stays in the stages until reset.
    void process (std::span<double> volts) noexcept;

    /// All capacitors empty, lamps out.
    void reset() noexcept;

    /// Whether copyStateFrom may be called with it: the same stages at the same rate, whatever their values.
    bool isLike (const PreampChain& other) const noexcept;

    /// Goes on where a preamp of the same make stands, with its charges and lamps.
    void copyStateFrom (const PreampChain& other) noexcept;

    const std::vector<std::string>& stageNames() const noexcept { return names_; }

    /// Clip lamp of a stage: whether it wanted to go beyond a rail since the last clearClips. Index as in stageNames.
    bool clips (std::size_t stage) const noexcept { return stages_[stage].hasClipped(); }

    void clearClips() noexcept;

    /// How late the output is, in internal samples: that of the stages with rails. Coupling and bandwidth bend the phase
    /// as the parts do and are not counted.
    int latencySamples() const noexcept { return latencySamples_; }

private:
    std::vector<StageVoice> stages_;
    std::vector<std::string> names_;
    std::string make_;
    int latencySamples_ = 0;
};

} // namespace stopwright
