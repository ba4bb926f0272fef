// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/PhrasePlayer.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

PhrasePlayer::PhrasePlayer (const Phrase& phrase, double rateHz, std::int64_t firstFrame)
    : keys_ (phrase.keys),
      swells_ (phrase.swells)
{
    const auto frameOf = [&] (double seconds) { return firstFrame + std::llround (std::max (0.0, seconds) * rateHz); };
    std::ranges::stable_sort (keys_, {}, &TimedKey::seconds);
    for (const TimedKey& key : keys_)
        keyFrames_.push_back (frameOf (key.seconds));
    std::ranges::stable_sort (swells_, {}, &TimedSwell::seconds);
    for (const TimedSwell& swell : swells_)
        swellFrames_.push_back (swell.seconds <= 0.0 ? 0 : frameOf (swell.seconds));
}

void PhrasePlayer::advance (int count)
{
    events_.clear();
    for (; nextKey_ < keys_.size() && keyFrames_[nextKey_] < frame_ + count; ++nextKey_)
    {
        const TimedKey& key = keys_[nextKey_];
        events_.push_back ({ static_cast<int> (keyFrames_[nextKey_] - frame_), key.key, key.down, key.keyboard });
    }
    swell_.reset();
    for (; nextSwell_ < swells_.size() && swellFrames_[nextSwell_] < frame_ + count; ++nextSwell_)
        swell_ = swells_[nextSwell_].position;
    frame_ += count;
}

} // namespace stopwright
