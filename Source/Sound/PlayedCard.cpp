// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/PlayedCard.h"

#include <algorithm>

namespace stopwright
{

namespace
{

/// One more than the highest knob number of a card; the taps' levels come first.
std::size_t knobCount (const Card& card, const CardVoice& voice)
{
    int count = static_cast<int> (card.taps.size());
    const auto countKnobsOf = [&] (const std::string& name)
    {
        for (const auto kind :
             { KnobKind::value, KnobKind::position, KnobKind::leakOhms, KnobKind::windingOhms, KnobKind::selfFarads,
               KnobKind::gainBandwidthHz, KnobKind::seriesOhms, KnobKind::sourceOhms })
            count = std::max (count, 1 + voice.findKnob ({ name, kind }).value_or (-1));
    };

    for (const Part& part : card.parts)
        countKnobsOf (part.name);
    for (const Tap& tap : card.taps)
        countKnobsOf (tap.name);
    return static_cast<std::size_t> (count);
}

} // namespace

PlayedCard::PlayedCard (const Card& card,
                        const KeySource& keySource,
                        const StreamSpec& spec,
                        double volts,
                        std::span<const std::unique_ptr<PlayedCard>> older)
    : voice (card, keySource, spec),
      knobs (knobCount (card, voice)),
      referenceVolts (volts)
{
    for (const auto& other : older)
        takeovers.push_back ({ other.get(), voice.prepareAdoption (other->voice) });
}

bool PlayedCard::turn (std::optional<int> knobIndex, double value) noexcept
{
    if (! knobIndex)
        return false;
    knobs.put (static_cast<std::size_t> (*knobIndex), value);
    return true;
}

void PlayedCard::repeatTurnsOf (const PlayedCard& other) noexcept
{
    for (std::size_t index = 0; index < std::min (knobs.size(), other.knobs.size()); ++index)
        if (const auto value = other.knobs.lastPut (index))
            knobs.put (index, *value);
}

void PlayedCard::deliverTurns() noexcept
{
    if (! knobs.takeNotice())
        return;
    for (std::size_t index = 0; index < knobs.size(); ++index)
        if (const auto value = knobs.take (index))
            voice.setKnobTarget (static_cast<int> (index), *value);
}

void PlayedCard::takeOverFrom (const PlayedCard& other) noexcept
{
    for (const Takeover& takeover : takeovers)
        if (takeover.from == &other)
            voice.adopt (other.voice, takeover.adoption);
}

} // namespace stopwright
