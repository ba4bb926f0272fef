// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/PhraseDeck.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace stopwright
{

namespace
{

constexpr auto never = std::numeric_limits<std::int64_t>::max();

double lastMoment (const Phrase& phrase)
{
    return std::max ({ PhraseDeck::leastSeconds, phrase.seconds, phrase.keys.empty() ? 0.0 : phrase.keys.back().seconds,
                       phrase.swells.empty() ? 0.0 : phrase.swells.back().seconds });
}

} // namespace

/// A phrase as it was handed over, which nobody changes any more, and what the audio thread tells of it.
struct PhraseDeck::Reel
{
    Phrase phrase;
    std::atomic<double> position { 0.0 }; ///< s
    std::atomic<bool> isOver { false };
    std::atomic<bool> wasReleased { false };
};

static_assert (std::atomic<double>::is_always_lock_free && std::atomic<bool>::is_always_lock_free);

PhraseDeck::PhraseDeck() = default;

PhraseDeck::~PhraseDeck() = default;

void PhraseDeck::prepare (double rateHz) noexcept
{
    const auto place = static_cast<double> (blockStart_ + std::exchange (offset_, 0));
    blockStart_ = std::llround (place * rateHz / rateHz_);
    rateHz_ = rateHz;
}

void PhraseDeck::play (Phrase phrase)
{
    auto reel = std::make_unique<Reel>();
    reel->phrase = inTimeOrder (std::move (phrase));
    reel->phrase.seconds = lastMoment (reel->phrase);
    publish (std::move (reel));
}

void PhraseDeck::stop()
{
    if (! isPlaying())
        return;
    auto silence = std::make_unique<Reel>();
    silence->isOver.store (true, std::memory_order_relaxed);
    publish (std::move (silence));
}

/// Hands a reel over. One that was never taken comes back out of the slot and is freed here.
void PhraseDeck::publish (std::unique_ptr<Reel> reel)
{
    collect();
    newest_ = reel.get();
    reels_.push_back (std::move (reel));
    if (const Reel* const untaken = nextReel_.exchange (newest_, std::memory_order_acq_rel))
        std::erase_if (reels_, [untaken] (const auto& held) { return held.get() == untaken; });
}

void PhraseDeck::collect()
{
    std::erase_if (reels_, [] (const auto& reel) { return reel->wasReleased.load (std::memory_order_acquire); });
}

bool PhraseDeck::isPlaying() const noexcept
{
    return newest_ != nullptr && ! newest_->isOver.load (std::memory_order_relaxed);
}

double PhraseDeck::positionSeconds() const noexcept
{
    return newest_ != nullptr ? newest_->position.load (std::memory_order_relaxed) : 0.0;
}

double PhraseDeck::lengthSeconds() const noexcept
{
    return newest_ != nullptr ? newest_->phrase.seconds : 0.0;
}

void PhraseDeck::begin() noexcept
{
    blockStart_ += std::exchange (offset_, 0);
    if (nextReel_.load (std::memory_order_relaxed) == nullptr)
        return;
    Reel* const taken = nextReel_.exchange (nullptr, std::memory_order_acq_rel);
    if (Reel* const before = std::exchange (reel_, taken))
    {
        mustRelease_ = ! before->isOver.load (std::memory_order_relaxed);
        before->wasReleased.store (true, std::memory_order_release);
    }
    blockStart_ = 0;
    nextKey_ = 0;
    nextSwell_ = 0;
}

std::int64_t PhraseDeck::frameOf (double seconds) const noexcept
{
    return std::llround (seconds * rateHz_);
}

/// Never back in the block, where another rate has moved the frames.
int PhraseDeck::offsetOf (std::int64_t frame) noexcept
{
    offset_ = static_cast<int> (std::max<std::int64_t> (offset_, frame - blockStart_));
    return offset_;
}

void PhraseDeck::standAt (int offset) noexcept
{
    offset_ = offset;
    if (reel_ != nullptr)
        reel_->position.store (
            std::clamp (static_cast<double> (blockStart_ + offset) / rateHz_, 0.0, reel_->phrase.seconds),
            std::memory_order_relaxed);
}

std::optional<PhraseEvent> PhraseDeck::next (int end) noexcept
{
    if (std::exchange (mustRelease_, false))
        return PhraseEvent { .kind = PhraseEvent::Kind::releaseAll, .frameOffset = offset_ };
    if (reel_ == nullptr || reel_->isOver.load (std::memory_order_relaxed))
        return {};
    if (const auto event = nextKeyOrMove (blockStart_ + end))
        return event;
    if (const auto event = comeToEnd (blockStart_ + end))
        return event;
    standAt (end);
    return {};
}

std::optional<PhraseEvent> PhraseDeck::nextKeyOrMove (std::int64_t end) noexcept
{
    const auto& keys = reel_->phrase.keys;
    const auto& swells = reel_->phrase.swells;
    const auto keyFrame = nextKey_ < keys.size() ? frameOf (keys[nextKey_].seconds) : never;
    const auto swellFrame = nextSwell_ < swells.size() ? frameOf (swells[nextSwell_].seconds) : never;
    if (std::min (keyFrame, swellFrame) >= end)
        return {};
    PhraseEvent event;
    if (swellFrame <= keyFrame)
    {
        event.kind = PhraseEvent::Kind::swell;
        event.frameOffset = offsetOf (swellFrame);
        event.swellPosition = swells[nextSwell_++].position;
        return event;
    }
    event.frameOffset = offsetOf (keyFrame);
    event.key = keys[nextKey_++];
    return event;
}

/// Once all events are out and the phrase is over before `end`.
std::optional<PhraseEvent> PhraseDeck::comeToEnd (std::int64_t end) noexcept
{
    const auto& phrase = reel_->phrase;
    const auto length = frameOf (phrase.seconds);
    if (length >= end || nextKey_ < phrase.keys.size() || nextSwell_ < phrase.swells.size())
        return {};
    const PhraseEvent event { .kind = PhraseEvent::Kind::releaseAll, .frameOffset = offsetOf (length) };
    if (isLoop())
    {
        blockStart_ -= length;
        nextKey_ = 0;
        nextSwell_ = 0;
    }
    else
    {
        standAt (event.frameOffset);
        reel_->isOver.store (true, std::memory_order_relaxed);
    }
    return event;
}

} // namespace stopwright
