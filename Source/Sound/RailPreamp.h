// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/InstrumentCards.h"
#include "Sound/OutletMix.h"
#include "Sound/PreampChain.h"
#include "Sound/RailBus.h"

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// A mixing bus with its stops and the preamp behind it, on the way to an outlet.
///
/// The rails of a bus amplifier are the first stage of the preamp: the bus itself stays linear, so while it clips the
/// stops do not feel each other.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class RailPreamp
{
public:
    /// `preamp` as Preamp with the stages' cards. Fails: Error with a sentence.
    RailPreamp (const MixingBus& bus,
                const Preamp& preamp,
                const std::vector<std::optional<Card>>& stageCards,
                double internalRateHz,
                int maxFrames);

    RailBus& bus() noexcept { return bus_; }

    int latencySamples() const noexcept { return chain_.latencySamples(); }

    const std::vector<std::string>& stageNames() const noexcept { return chain_.stageNames(); }

    /// Plays `blockCount` blocks of the tones from their front on and adds them to the outlet, `offset` later.
    void process (int blockCount, OutletMix& outlet, int offset) noexcept;

    /// A bit for each stage that has clipped since the last call.
    std::uint64_t takeClips() noexcept;

    bool isLike (const RailPreamp& other) const noexcept { return chain_.isLike (other.chain_); }

    /// The bus always; the chain if it is like.
    void adopt (const RailPreamp& other) noexcept;

private:
    RailBus bus_;
    PreampChain chain_;
    std::vector<double> volts_;
};

} // namespace stopwright
