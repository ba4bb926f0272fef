// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/Engine.h"

#include "Sound/Kernel.h"
#include "Sound/ListeningReference.h"
#include "Sound/TelemetryBoard.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <functional>
#include <mutex>
#include <optional>
#include <utility>
#include <vector>

namespace stopwright
{

namespace
{

/// Processor time is read without entering the kernel on the systems this is meant for.
double secondsSince (std::chrono::steady_clock::time_point start) noexcept
{
    return std::chrono::duration<double> (std::chrono::steady_clock::now() - start).count();
}

} // namespace

struct Engine::Implementation
{
    Implementation() { mailbox.levelDb.store (startListeningLevelDb, std::memory_order_relaxed); }

    void publish (std::unique_ptr<PlayedVoice> played);
    bool turn (double value, const std::function<std::optional<int> (const CardVoice&)>& find);

    // What the threads share.
    Mailbox mailbox;
    TelemetryBoard telemetry;
    std::atomic<int> preparations { 0 };

    // The audio thread's.
    StreamSpec spec;
    std::unique_ptr<Kernel> kernel = std::make_unique<Kernel> (spec, mailbox);

    // The control threads'. The mutex keeps a knob from turning on a card that is just being replaced; the audio thread
    // has no part in it.
    std::mutex newestMutex;
    PlayedVoice* newest = nullptr;
    std::vector<std::unique_ptr<PlayedVoice>> cards; ///< all that the audio thread may still hold, oldest first
    std::optional<Card> card;
    std::optional<KeySource> keySource;
    double reference = 0.0;
};

Engine::Engine() : implementation_ (std::make_unique<Implementation>()) {}

Engine::~Engine() = default;

void Engine::prepare (const StreamSpec& spec)
{
    checkStream (spec);
    auto& own = *implementation_;

    std::unique_ptr<PlayedVoice> rebuilt;
    const std::scoped_lock lock (own.newestMutex);
    if (own.card)
    {
        rebuilt = std::make_unique<PlayedVoice> (*own.card, *own.keySource, spec, own.reference);
        rebuilt->repeatTurnsOf (*own.newest);
    }

    own.spec = spec;
    own.kernel = std::make_unique<Kernel> (spec, own.mailbox);
    own.mailbox.keys.clear();
    own.preparations.fetch_add (1, std::memory_order_release);
    own.telemetry.clear();
    own.newest = rebuilt.get();
    own.mailbox.nextCard.store (rebuilt.get(), std::memory_order_release);
    own.cards.clear();
    if (rebuilt)
        own.cards.push_back (std::move (rebuilt));
}

void Engine::setCard (const Card& card, const KeySource& keySource, bool newReference)
{
    auto& own = *implementation_;
    collectReplaced();
    const double reference = newReference || ! own.card ? referenceVolts (card, keySource) : own.reference;
    auto played = std::make_unique<PlayedVoice> (card, keySource, own.spec, reference, own.cards);

    own.card = card;
    own.keySource.emplace (keySource);
    own.reference = reference;
    own.publish (std::move (played));
}

/// Hands a card over. One that was never taken comes back out of the slot and is freed here.
void Engine::Implementation::publish (std::unique_ptr<PlayedVoice> played)
{
    PlayedVoice* const published = played.get();
    cards.push_back (std::move (played));
    {
        const std::scoped_lock lock (newestMutex);
        newest = published;
    }
    if (PlayedVoice* const untaken = mailbox.nextCard.exchange (published, std::memory_order_acq_rel))
        std::erase_if (cards, [untaken] (const auto& held) { return held.get() == untaken; });
}

bool Engine::Implementation::turn (double value, const std::function<std::optional<int> (const CardVoice&)>& find)
{
    const std::scoped_lock lock (newestMutex);
    return newest != nullptr && std::isfinite (value) && newest->turn (find (newest->voice), value);
}

bool Engine::turn (const PartKnob& knob, double value)
{
    return implementation_->turn (value, [&] (const CardVoice& voice) { return voice.findKnob (knob); });
}

bool Engine::turnTapLevel (const std::string& tapName, double voltsPeakToPeak)
{
    return implementation_->turn (voltsPeakToPeak,
                                  [&] (const CardVoice& voice) { return voice.findTapLevelKnob (tapName); });
}

bool Engine::key (int key, bool down)
{
    return key >= 0 && implementation_->mailbox.keys.push ({ key, down });
}

bool Engine::releaseAllKeys()
{
    return implementation_->mailbox.keys.push ({ KeyMessage::allKeys, false });
}

int Engine::preparations() const noexcept
{
    return implementation_->preparations.load (std::memory_order_acquire);
}

void Engine::setListeningLevelDb (double levelDb) noexcept
{
    if (! std::isnan (levelDb))
        implementation_->mailbox.levelDb.store (std::clamp (levelDb, lowestListeningLevelDb, highestListeningLevelDb),
                                                std::memory_order_relaxed);
}

double Engine::listeningLevelDb() const noexcept
{
    return implementation_->mailbox.levelDb.load (std::memory_order_relaxed);
}

void Engine::collectReplaced()
{
    std::erase_if (implementation_->cards,
                   [] (const auto& card) { return card->wasReleased.load (std::memory_order_acquire); });
}

bool Engine::isSilencedByFault() const noexcept
{
    return implementation_->telemetry.isSilenced();
}

Telemetry Engine::telemetry() noexcept
{
    return implementation_->telemetry.take();
}

int Engine::latencyFrames() const noexcept
{
    const auto& own = *implementation_;
    return own.kernel->stageLatencyFrames() + (own.newest != nullptr ? own.newest->voice.delayFrames() : 0);
}

void Engine::process (std::span<const KeyEvent> events, std::span<float* const> channels, int frameCount) noexcept
{
    auto& own = *implementation_;
    const auto start = std::chrono::steady_clock::now();
    own.kernel->process (events, channels, frameCount);

    Telemetry readings = own.kernel->takeReadings();
    if (frameCount > 0)
        readings.loadFraction = secondsSince (start) * own.spec.deviceRateHz / frameCount;
    own.telemetry.report (readings);
}

} // namespace stopwright
