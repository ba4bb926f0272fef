// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/Phrase.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace stopwright
{

/// Plays a phrase from a frame of a stream on, block by block. Threading: [control].
class PhrasePlayer
{
public:
    /// `firstFrame` is where the phrase begins. Its keys and moves need not be in order; times below 0 count as 0.
    PhrasePlayer (const Phrase& phrase, double rateHz, std::int64_t firstFrame);

    /// Goes on to the next block of `count` frames.
    void advance (int count);

    /// The keys of this block, until the next one.
    std::span<const KeyEvent> events() const noexcept { return events_; }

    /// Where the swell shoe goes to in this block, if anywhere. It is where it starts in the stream's first block, before
    /// the phrase begins.
    std::optional<double> swell() const noexcept { return swell_; }

private:
    Phrase phrase_;
    std::vector<std::int64_t> keyFrames_;
    std::vector<std::int64_t> swellFrames_;
    std::vector<KeyEvent> events_;
    std::optional<double> swell_;
    std::size_t nextKey_ = 0;
    std::size_t nextSwell_ = 0;
    std::int64_t frame_ = 0;
};

} // namespace stopwright
