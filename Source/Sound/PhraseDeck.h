// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/Phrase.h"

#include <atomic>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

namespace stopwright
{

/// Something that a phrase does at a frame of a block.
struct PhraseEvent
{
    enum class Kind
    {
        key,       ///< `key` goes down or up
        swell,     ///< the shoe goes to `swellPosition`
        releaseAll ///< every key that the phrase holds goes up: it ended, begins again or gives way
    };

    Kind kind = Kind::key;
    int frameOffset = 0;
    TimedKey key {};
    double swellPosition = 1.0;
};

/// Plays phrases live, each event at its frame, once or over and over. A phrase is put in time order and handed over
/// whole through one atomic slot; what it replaces is freed on the control thread.
///
/// Threading: construct, prepare (with the sound stopped), play, stop and collect on one [control] thread; setLoop and the
/// readings on [any]; begin and next on [audio], no allocation, no lock.
class PhraseDeck
{
public:
    /// A phrase lasts at least so long: one that took no time would begin again without end.
    static constexpr double leastSeconds = 0.05;

    PhraseDeck();
    ~PhraseDeck();
    PhraseDeck (const PhraseDeck&) = delete;
    PhraseDeck& operator= (const PhraseDeck&) = delete;
    PhraseDeck (PhraseDeck&&) = delete;
    PhraseDeck& operator= (PhraseDeck&&) = delete;

    /// Frames a second. What plays goes on from where it is.
    void prepare (double rateHz) noexcept;

    /// Plays a phrase from its beginning, from the next block on, in place of what plays.
    void play (Phrase phrase);

    /// Lets go of what plays, with the next block.
    void stop();

    /// Frees what the audio thread has let go of. Call it a few times a second.
    void collect();

    void setLoop (bool isOn) noexcept { isLoop_.store (isOn, std::memory_order_relaxed); }

    bool isLoop() const noexcept { return isLoop_.load (std::memory_order_relaxed); }

    /// Whether a phrase was set and has neither ended nor been stopped, and how far it is. Threading: [control].
    bool isPlaying() const noexcept;
    double positionSeconds() const noexcept;
    double lengthSeconds() const noexcept;

    /// Begins a block: takes what was set. Ask `next` for all of it.
    void begin() noexcept;

    /// The next event before frame `end` of the block; when there is none any more, the phrase stands at `end`. Events
    /// come in time order.
    std::optional<PhraseEvent> next (int end) noexcept;

private:
    struct Reel;

    void publish (std::unique_ptr<Reel> reel);
    std::int64_t frameOf (double seconds) const noexcept;
    int offsetOf (std::int64_t frame) noexcept;
    std::optional<PhraseEvent> nextKeyOrMove (std::int64_t end) noexcept;
    std::optional<PhraseEvent> comeToEnd (std::int64_t end) noexcept;
    void standAt (int offset) noexcept;

    // What the threads share.
    std::atomic<Reel*> nextReel_ { nullptr }; ///< the latest set and not taken yet; both sides exchange it
    std::atomic<bool> isLoop_ { false };

    // The audio thread's.
    double rateHz_ = 48000.0;
    Reel* reel_ = nullptr;
    std::size_t nextKey_ = 0;
    std::size_t nextSwell_ = 0;
    std::int64_t blockStart_ = 0; ///< the frame of the phrase at which the block begins
    int offset_ = 0;              ///< the frame of the block at which the phrase stands
    bool mustRelease_ = false;    ///< before anything else in the block

    // The control thread's.
    Reel* newest_ = nullptr;
    std::vector<std::unique_ptr<Reel>> reels_; ///< all that the audio thread may still hold, oldest first
};

} // namespace stopwright
