// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/PreampChain.h"

#include "Units/Error.h"

#include <cassert>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr double lowestRateHz = 100e3;

StageVoice makeStage (const Preamp& preamp, const PreampStage& stage, const Card* card, double internalRateHz)
{
    try
    {
        return { stage, card, internalRateHz };
    }
    catch (const Error& error)
    {
        throw Error ("Preamp '" + preamp.name + "', stage '" + stage.name + "': " + error.what());
    }
}

} // namespace

PreampChain::PreampChain (const Preamp& preamp,
                          double internalRateHz,
                          std::span<const std::reference_wrapper<const Card>> cards)
    : make_ (std::to_string (internalRateHz) + ":")
{
    if (! (internalRateHz >= lowestRateHz) || ! std::isfinite (internalRateHz))
        throw Error ("The preamp '" + preamp.name + "' cannot run at " + std::to_string (internalRateHz)
                     + " samples per second; give it at least 100000.");

    std::size_t cardsUsed = 0;
    stages_.reserve (preamp.stages.size());
    for (const auto& stage : preamp.stages)
    {
        const bool takesCard = stage.kind == StageKind::circuit && cardsUsed < cards.size();
        const Card* const card = takesCard ? &cards[cardsUsed++].get() : nullptr;
        stages_.push_back (makeStage (preamp, stage, card, internalRateHz));
        names_.push_back (stage.name);
        make_ += stages_.back().make();
        latencySamples_ += stages_.back().latencySamples();
    }
    if (cardsUsed < cards.size())
        throw Error ("The preamp '" + preamp.name + "' has " + std::to_string (cardsUsed) + " circuit stages, but "
                     + std::to_string (cards.size()) + " cards were given; give one for each.");
}

void PreampChain::process (std::span<double> volts) noexcept
{
    for (auto& stage : stages_)
        stage.process (volts);
}

void PreampChain::reset() noexcept
{
    for (auto& stage : stages_)
        stage.reset();
}

bool PreampChain::isLike (const PreampChain& other) const noexcept
{
    return other.make_ == make_;
}

void PreampChain::copyStateFrom (const PreampChain& other) noexcept
{
    assert (isLike (other));
    for (std::size_t stage = 0; stage < stages_.size(); ++stage)
        stages_[stage].copyStateFrom (other.stages_[stage]);
}

void PreampChain::clearClips() noexcept
{
    for (auto& stage : stages_)
        stage.clearLamp();
}

} // namespace stopwright
