// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/RailPreamp.h"

#include <functional>

namespace stopwright
{

namespace
{

/// The preamp with the rails of the bus amplifier as its first stage.
Preamp withBusRails (const MixingBus& bus, Preamp preamp)
{
    if (bus.kind != BusKind::virtualEarth || ! bus.rails)
        return preamp;
    PreampStage stage;
    stage.name = bus.name;
    stage.rails = bus.rails;
    preamp.stages.insert (preamp.stages.begin(), stage);
    return preamp;
}

std::vector<std::reference_wrapper<const Card>> cardsOf (const std::vector<std::optional<Card>>& stageCards)
{
    std::vector<std::reference_wrapper<const Card>> cards;
    for (const auto& card : stageCards)
        if (card)
            cards.emplace_back (*card);
    return cards;
}

} // namespace

RailPreamp::RailPreamp (const MixingBus& bus,
                        const Preamp& preamp,
                        const std::vector<std::optional<Card>>& stageCards,
                        double internalRateHz,
                        int maxFrames)
    : bus_ (bus, internalRateHz),
      chain_ (withBusRails (bus, preamp), internalRateHz, cardsOf (stageCards)),
      volts_ (static_cast<std::size_t> (maxFrames))
{}

void RailPreamp::process (int blockCount, OutletMix& outlet, int offset) noexcept
{
    const int frames = blockCount * RailStop::length;
    for (int frame = 0; frame < frames; frame += RailStop::length)
        bus_.process (frame, volts_.data() + frame);
    const auto volts = std::span (volts_).first (static_cast<std::size_t> (frames));
    chain_.process (volts);
    outlet.add (volts, offset);
}

std::uint64_t RailPreamp::takeClips() noexcept
{
    std::uint64_t clips = 0;
    for (std::size_t stage = 0; stage < chain_.stageNames().size(); ++stage)
        clips |= chain_.clips (stage) ? std::uint64_t { 1 } << stage : 0;
    chain_.clearClips();
    return clips;
}

void RailPreamp::adopt (const RailPreamp& other) noexcept
{
    bus_.adopt (other.bus_);
    if (chain_.isLike (other.chain_))
        chain_.copyStateFrom (other.chain_);
}

} // namespace stopwright
