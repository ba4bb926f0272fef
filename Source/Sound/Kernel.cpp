// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/Kernel.h"

#include "Sound/FlushToZero.h"
#include "Sound/Pieces.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

Kernel::Kernel (const StreamSpec& spec, Mailbox& mailbox)
    : rateHz_ (spec.deviceRateHz),
      mailbox_ (mailbox),
      player_ (spec.deviceRateHz),
      stage_ (spec.deviceRateHz, mailbox.levelDb.load (std::memory_order_relaxed)),
      meter_ (spec.deviceRateHz)
{}

void Kernel::process (std::span<const KeyEvent> events, std::span<float* const> channels, int frameCount) noexcept
{
    const FlushToZero flushToZero;
    stage_.setLevelDb (mailbox_.levelDb.load (std::memory_order_relaxed));
    takeCard();
    takeKeys();
    player_.deliverTurns();

    if (frameCount <= 0)
        for (const KeyEvent& event : events)
            key (event.key, Side::events, event.down, 0);

    runInPieces (
        events, frameCount,
        [this] (const KeyEvent& event, int frame) { key (event.key, Side::events, event.down, frame); },
        [&] (int start, int count) { playPiece (channels, start, count); });
}

void Kernel::takeCard() noexcept
{
    // The exchange both takes the card and makes its contents visible here; what is put in later waits for the next time.
    if (! player_.isReady() || mailbox_.nextCard.load (std::memory_order_relaxed) == nullptr)
        return;
    if (PlayedVoice* const card = mailbox_.nextCard.exchange (nullptr, std::memory_order_acq_rel))
    {
        player_.take (*card);
        stage_.resume();
    }
}

void Kernel::takeKeys() noexcept
{
    // At most one queue's worth, so that a writer who never stops cannot hold the block.
    for (std::size_t taken = 0; taken < KeyQueue::capacity; ++taken)
    {
        const auto message = mailbox_.keys.pop();
        if (! message)
            return;
        if (message->key == KeyMessage::allKeys)
        {
            holders_.clear();
            player_.releaseAllKeys();
        }
        else
            key (message->key, Side::control, message->down, 0);
    }
}

void Kernel::key (int key, Side side, bool down, int frameOffset) noexcept
{
    if (down)
        lastKey_ = key;
    // A press is passed on though the other side has the key already: repeats are harmless.
    if (holders_.change (key, static_cast<int> (side), down) || down)
        player_.key (key, down, frameOffset);
}

void Kernel::playPiece (std::span<float* const> channels, int start, int count) noexcept
{
    const auto relative = std::span (relative_).first (static_cast<std::size_t> (count));
    const auto heard = std::span (heard_).first (static_cast<std::size_t> (count));

    player_.renderPiece (relative);
    if (player_.hasFault())
        stage_.silence();
    stage_.process (relative, heard);
    meter_.process (heard);
    for (float* const channel : channels)
        std::copy (heard.begin(), heard.end(), channel + start);
}

Telemetry Kernel::takeReadings() noexcept
{
    return { .peakVolts = player_.takePeakVolts(),
             .peakFullScale = meter_.takePeak(),
             .rmsFullScaleDb = meter_.rmsDb(),
             .limiterReductionDb = stage_.takeReductionDb(),
             .soundingKeys = player_.soundingKeys(),
             .lastKey = lastKey_,
             .silencedByFault = stage_.isSilenced(),
             .knobsMoving = player_.knobsMoving() };
}

int Kernel::stageLatencyFrames() const noexcept
{
    return static_cast<int> (std::lround (stage_.latencySeconds() * rateHz_));
}

} // namespace stopwright
