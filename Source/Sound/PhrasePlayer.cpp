// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/PhrasePlayer.h"

#include <cmath>

namespace stopwright
{

PhrasePlayer::PhrasePlayer (const Phrase& phrase, double rateHz, std::int64_t firstFrame)
    : phrase_ (inTimeOrder (phrase))
{
    const auto frameOf = [&] (double seconds) { return firstFrame + std::llround (seconds * rateHz); };
    for (const TimedKey& key : phrase_.keys)
        keyFrames_.push_back (frameOf (key.seconds));
    for (const TimedSwell& swell : phrase_.swells)
        swellFrames_.push_back (swell.seconds <= 0.0 ? 0 : frameOf (swell.seconds));
}

void PhrasePlayer::advance (int count)
{
    events_.clear();
    for (; nextKey_ < keyFrames_.size() && keyFrames_[nextKey_] < frame_ + count; ++nextKey_)
    {
        const TimedKey& key = phrase_.keys[nextKey_];
        events_.push_back ({ static_cast<int> (keyFrames_[nextKey_] - frame_), key.key, key.down, key.keyboard });
    }
    swell_.reset();
    for (; nextSwell_ < swellFrames_.size() && swellFrames_[nextSwell_] < frame_ + count; ++nextSwell_)
        swell_ = phrase_.swells[nextSwell_].position;
    frame_ += count;
}

} // namespace stopwright
