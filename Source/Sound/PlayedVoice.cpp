// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/PlayedVoice.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

PlayedVoice::PlayedVoice (std::unique_ptr<Voice> played,
                          double volts,
                          std::span<const std::unique_ptr<PlayedVoice>> older)
    : voice (std::move (played)),
      controls (static_cast<std::size_t> (voice->controlCount())),
      referenceVolts (volts)
{
    for (const auto& other : older)
        takeovers.push_back ({ other.get(), voice->prepareAdoption (*other->voice) });
}

bool PlayedVoice::turn (std::optional<int> controlIndex, double value) noexcept
{
    if (! controlIndex)
        return false;
    controls.put (static_cast<std::size_t> (*controlIndex), value);
    return true;
}

void PlayedVoice::repeatTurnsOf (const PlayedVoice& other) noexcept
{
    setGain (other.gain());
    for (std::size_t index = 0; index < std::min (controls.size(), other.controls.size()); ++index)
        if (const auto value = other.controls.lastPut (index))
            controls.put (index, *value);
}

void PlayedVoice::deliverTurns() noexcept
{
    if (! controls.takeNotice())
        return;
    for (std::size_t index = 0; index < controls.size(); ++index)
        if (const auto value = controls.take (index))
            voice->setControl (static_cast<int> (index), *value);
}

void PlayedVoice::takeOverFrom (const PlayedVoice& other) noexcept
{
    for (const Takeover& takeover : takeovers)
        if (takeover.from == &other)
            voice->adopt (*other.voice, takeover.adoption.get());
}

} // namespace stopwright
