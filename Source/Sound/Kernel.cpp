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
    takeVoice();
    takeKeys();
    player_.deliverTurns();
    player_.setSwell (mailbox_.swell.load (std::memory_order_relaxed));

    if (frameCount <= 0)
        for (const KeyEvent& event : events)
            key (event.key, event.keyboard, event.down, 0);

    runInPieces (
        events, frameCount,
        [this] (const KeyEvent& event, int frame) { key (event.key, event.keyboard, event.down, frame); },
        [&] (int start, int count) { playPiece (channels, start, count); });
}

void Kernel::takeVoice() noexcept
{
    // The exchange both takes the voice and makes its contents visible here; what is put in later waits for the next time.
    if (! player_.isReady() || mailbox_.nextVoice.load (std::memory_order_relaxed) == nullptr)
        return;
    if (PlayedVoice* const voice = mailbox_.nextVoice.exchange (nullptr, std::memory_order_acq_rel))
    {
        player_.take (*voice);
        agreeOnKeys();
        stage_.resume();
    }
}

// A voice with other divisions may hear the same keyboards elsewhere.
void Kernel::agreeOnKeys() noexcept
{
    for (int division = 0; division < Keyboard::midiChannels; ++division)
        for (int key = 0; key < HeldKeys::keyCount; ++key)
            player_.key (division, key, isHeldIn (division, key), 0);
}

bool Kernel::isHeldIn (int division, int key) const noexcept
{
    const unsigned holders = holders_.holdersOf (key);
    for (int keyboard = 0; keyboard < Keyboard::count && holders >> static_cast<unsigned> (keyboard) != 0; ++keyboard)
        if (holders_.isHeldBy (key, keyboard) && player_.divisionOf (keyboard) == division)
            return true;
    return false;
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
            key (message->key, message->keyboard, message->down, 0);
    }
}

void Kernel::key (int key, int keyboard, bool down, int frameOffset) noexcept
{
    if (down)
        lastKey_ = key;
    holders_.change (key, keyboard, down);
    const int division = player_.divisionOf (keyboard);
    // A press is passed on though another keyboard has the key already: repeats are harmless.
    if (down || ! isHeldIn (division, key))
        player_.key (division, key, down, frameOffset);
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
             .clips = player_.takeClips(),
             .soundingKeys = player_.soundingKeys(),
             .lastKey = lastKey_,
             .silencedByFault = stage_.isSilenced(),
             .knobsMoving = player_.controlsMove() };
}

int Kernel::stageLatencyFrames() const noexcept
{
    return static_cast<int> (std::lround (stage_.latencySeconds() * rateHz_));
}

} // namespace stopwright
