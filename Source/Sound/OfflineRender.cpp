// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/OfflineRender.h"

#include "Sound/CardVoice.h"
#include "Sound/Engine.h"
#include "Sound/FlushToZero.h"
#include "Units/Error.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <limits>

namespace stopwright
{

namespace
{

constexpr int blockFrames = 512;

// The engine comes out of silence in 200 ms; a phrase begins after that.
constexpr double preRollSeconds = 0.3;

/// Plays a phrase from `firstFrame` of a stream on, block by block.
class PhrasePlayer
{
public:
    PhrasePlayer (const Phrase& phrase, double rateHz, std::int64_t firstFrame) : keys_ (phrase.keys)
    {
        std::ranges::stable_sort (keys_, {}, &TimedKey::seconds);
        for (const TimedKey& key : keys_)
            frames_.push_back (firstFrame + std::llround (std::max (0.0, key.seconds) * rateHz));
    }

    /// The events of the coming `count` frames.
    std::span<const KeyEvent> eventsFor (int count)
    {
        events_.clear();
        for (; next_ < keys_.size() && frames_[next_] < frame_ + count; ++next_)
            events_.push_back ({ static_cast<int> (frames_[next_] - frame_), keys_[next_].key, keys_[next_].down });
        frame_ += count;
        return events_;
    }

private:
    std::vector<TimedKey> keys_;
    std::vector<std::int64_t> frames_;
    std::vector<KeyEvent> events_;
    std::size_t next_ = 0;
    std::int64_t frame_ = 0;
};

[[noreturn]] void refuseFault (const Card& card)
{
    throw Error ("The output of card '" + card.name
                 + "' runs away to infinity, so there is nothing to render: look for an amplifier whose feedback "
                   "goes to its plus input.");
}

using BlockMaker = std::function<void (std::span<const KeyEvent>, std::span<float>)>;

/// Runs `make` over lead-in and phrase and passes on what follows the lead-in.
bool run (const RenderRequest& request,
          std::int64_t silentFrames,
          std::int64_t delayFrames,
          const BlockMaker& make,
          const std::function<void (std::span<const float>)>& sink,
          const std::function<bool (double)>& progress)
{
    const std::int64_t wanted = std::llround (std::max (0.0, request.phrase.seconds) * request.rateHz);
    const std::int64_t leadIn = silentFrames + delayFrames;
    const std::int64_t total = leadIn + wanted;
    PhrasePlayer player (request.phrase, request.rateHz, silentFrames);

    std::array<float, blockFrames> block {};
    for (std::int64_t frame = 0; frame < total; frame += blockFrames)
    {
        if (progress && ! progress (static_cast<double> (frame) / static_cast<double> (total)))
            return false;
        const int count = static_cast<int> (std::min<std::int64_t> (blockFrames, total - frame));
        const auto samples = std::span (block).first (static_cast<std::size_t> (count));
        make (player.eventsFor (count), samples);
        const auto skipped = std::clamp<std::int64_t> (leadIn - frame, 0, count);
        if (skipped < count)
            sink (samples.subspan (static_cast<std::size_t> (skipped)));
    }
    return ! progress || progress (1.0);
}

} // namespace

bool renderOffline (const Card& card,
                    const KeySource& keySource,
                    const RenderRequest& request,
                    const std::function<void (std::span<const float>)>& sink,
                    const std::function<bool (double)>& progress)
{
    StreamSpec spec { .deviceRateHz = request.rateHz, .maxFrames = blockFrames };
    checkStream (spec);
    if (request.scale == RenderScale::volts)
    {
        // These are numbers to be compared, and there is time: at the live rate a notch near 10 kHz would be off by 1 dB.
        spec.lowestInternalRateHz = StreamSpec::fineInternalRateHz;
        CardVoice voice (card, keySource, spec);
        std::array<double, blockFrames> volts {};
        const auto make = [&] (std::span<const KeyEvent> events, std::span<float> out)
        {
            const FlushToZero flushToZero;
            voice.process (events, std::span (volts).first (out.size()));
            if (voice.hasFault())
                refuseFault (card);
            std::transform (volts.begin(), volts.begin() + static_cast<std::ptrdiff_t> (out.size()), out.begin(),
                            [] (double value) { return static_cast<float> (value); });
        };
        return run (request, 0, voice.delayFrames(), make, sink, progress);
    }

    Engine engine;
    engine.prepare (spec);
    engine.setCard (card, keySource, true);
    const auto make = [&] (std::span<const KeyEvent> events, std::span<float> out)
    {
        float* const channels[] = { out.data() };
        engine.process (events, channels, static_cast<int> (out.size()));
        if (engine.telemetry().silencedByFault)
            refuseFault (card);
    };
    return run (request, std::llround (preRollSeconds * request.rateHz), engine.latencyFrames(), make, sink, progress);
}

} // namespace stopwright
