// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/Engine.h"

#include "Sound/CardVoice.h"
#include "Sound/ElapsedTime.h"
#include "Sound/InstrumentVoice.h"
#include "Sound/Kernel.h"
#include "Sound/ListeningReference.h"
#include "Sound/TelemetryBoard.h"
#include "Sound/TrialGain.h"
#include "Units/Decibels.h"

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

struct Engine::Implementation
{
    Implementation() { mailbox.levelDb.store (startListeningLevelDb, std::memory_order_relaxed); }

    void collectReplaced()
    {
        std::erase_if (voices, [] (const auto& voice) { return voice->wasReleased.load (std::memory_order_acquire); });
    }

    void publish (std::unique_ptr<PlayedVoice> played, const std::string& tablet);
    void play (std::function<std::unique_ptr<Voice> (const StreamSpec&)> maker,
               double referenceVolts,
               double trialGainDb,
               const std::string& tablet = {});
    template <typename Kind>
    bool turn (double value, const std::function<std::optional<int> (const Kind&)>& find);

    // What the threads share.
    Mailbox mailbox;
    TelemetryBoard telemetry;
    std::atomic<int> preparations { 0 };

    // The audio thread's.
    StreamSpec spec;
    std::unique_ptr<Kernel> kernel = std::make_unique<Kernel> (spec, mailbox);

    // The control threads'. The mutex keeps a knob from turning on a voice that is just being replaced; the audio thread
    // has no part in it.
    std::mutex newestMutex;
    PlayedVoice* newest = nullptr;
    std::string tabletInHand;                         ///< of the newest
    std::vector<std::unique_ptr<PlayedVoice>> voices; ///< all that the audio thread may still hold, oldest first
    std::function<std::unique_ptr<Voice> (const StreamSpec&)> makeVoice; ///< the one set last, for any stream
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
    if (own.makeVoice)
    {
        rebuilt = std::make_unique<PlayedVoice> (own.makeVoice (spec), own.reference);
        rebuilt->repeatTurnsOf (*own.newest);
    }

    own.spec = spec;
    own.kernel = std::make_unique<Kernel> (spec, own.mailbox);
    own.mailbox.keys.clear();
    own.preparations.fetch_add (1, std::memory_order_release);
    own.telemetry.clear();
    own.newest = rebuilt.get();
    own.mailbox.nextVoice.store (rebuilt.get(), std::memory_order_release);
    own.voices.clear();
    if (rebuilt)
        own.voices.push_back (std::move (rebuilt));
}

void Engine::setCard (const Card& card, const KeySource& keySource, bool newReference, double trialGainDb)
{
    auto& own = *implementation_;
    own.play ([card, keySource] (const StreamSpec& spec)
              { return std::make_unique<CardVoice> (card, keySource, spec); },
              newReference || ! own.makeVoice ? referenceVolts (card, keySource) : own.reference, trialGainDb);
}

void Engine::setInstrument (const Instrument& instrument,
                            const InstrumentCards& cards,
                            const std::string& tabletInHand,
                            bool newReference,
                            double trialGainDb)
{
    auto& own = *implementation_;
    own.play ([instrument, cards] (const StreamSpec& spec)
              { return std::make_unique<InstrumentVoice> (instrument, cards, spec); },
              newReference || ! own.makeVoice ? referenceVolts (instrument, cards, tabletInHand) : own.reference,
              trialGainDb, tabletInHand);
}

void Engine::Implementation::play (std::function<std::unique_ptr<Voice> (const StreamSpec&)> maker,
                                   double referenceVolts,
                                   double trialGainDb,
                                   const std::string& tablet)
{
    collectReplaced();
    auto played = std::make_unique<PlayedVoice> (maker (spec), referenceVolts, voices);
    played->setGain (trialGain (trialGainDb));
    makeVoice = std::move (maker);
    reference = referenceVolts;
    publish (std::move (played), tablet);
}

/// Hands a voice over. One that was never taken comes back out of the slot and is freed here.
void Engine::Implementation::publish (std::unique_ptr<PlayedVoice> played, const std::string& tablet)
{
    PlayedVoice* const published = played.get();
    voices.push_back (std::move (played));
    {
        const std::scoped_lock lock (newestMutex);
        newest = published;
        tabletInHand = tablet;
    }
    if (PlayedVoice* const untaken = mailbox.nextVoice.exchange (published, std::memory_order_acq_rel))
        std::erase_if (voices, [untaken] (const auto& held) { return held.get() == untaken; });
}

/// Turns a control of the newest voice, if it is of this kind and has it.
template <typename Kind>
bool Engine::Implementation::turn (double value, const std::function<std::optional<int> (const Kind&)>& find)
{
    const std::scoped_lock lock (newestMutex);
    const auto* const voice = newest != nullptr ? dynamic_cast<const Kind*> (newest->voice.get()) : nullptr;
    return voice != nullptr && std::isfinite (value) && newest->turn (find (*voice), value);
}

bool Engine::turn (const PartKnob& knob, double value)
{
    auto& own = *implementation_;
    return own.turn<CardVoice> (value, [&] (const CardVoice& voice) { return voice.findKnob (knob); })
           || own.turn<InstrumentVoice> (value, [&] (const InstrumentVoice& voice)
                                         { return voice.findKnob (own.tabletInHand, knob); });
}

bool Engine::turnTapLevel (const std::string& tapName, double voltsPeakToPeak)
{
    auto& own = *implementation_;
    return own.turn<CardVoice> (voltsPeakToPeak,
                                [&] (const CardVoice& voice) { return voice.findTapLevelKnob (tapName); })
           || own.turn<InstrumentVoice> (voltsPeakToPeak, [&] (const InstrumentVoice& voice)
                                         { return voice.findTapLevelKnob (own.tabletInHand, tapName); });
}

void Engine::setTrialGainDb (double gainDb)
{
    const std::scoped_lock lock (implementation_->newestMutex);
    if (implementation_->newest != nullptr)
        implementation_->newest->setGain (trialGain (gainDb));
}

double Engine::trialGainDb() const
{
    const std::scoped_lock lock (implementation_->newestMutex);
    return implementation_->newest != nullptr ? toDecibels (implementation_->newest->gain()) : 0.0;
}

bool Engine::draw (const std::string& tablet, bool isDrawn)
{
    return implementation_->turn<InstrumentVoice> (isDrawn ? 1.0 : 0.0, [&] (const InstrumentVoice& voice)
                                                   { return voice.findDraw (tablet); });
}

bool Engine::drawCoupler (const std::string& tablet, bool isDrawn)
{
    return implementation_->turn<InstrumentVoice> (isDrawn ? 1.0 : 0.0, [&] (const InstrumentVoice& voice)
                                                   { return voice.findCoupler (tablet); });
}

bool Engine::switchOutlet (const std::string& outlet, bool isOn)
{
    return implementation_->turn<InstrumentVoice> (isOn ? 1.0 : 0.0, [&] (const InstrumentVoice& voice)
                                                   { return voice.findOutletSwitch (outlet); });
}

bool Engine::turnMixing (const std::string& tablet, double ohms)
{
    return implementation_->turn<InstrumentVoice> (ohms, [&] (const InstrumentVoice& voice)
                                                   { return voice.findMixingKnob (tablet); });
}

bool Engine::turnTremulant (const std::string& outlet, const TremulantSettings& settings)
{
    auto& own = *implementation_;
    const auto turn = [&] (double value, int place)
    {
        return own.turn<InstrumentVoice> (value,
                                          [&] (const InstrumentVoice& voice) -> std::optional<int>
                                          {
                                              const auto rate = voice.findTremulant (outlet);
                                              return rate ? std::optional (*rate + place) : std::nullopt;
                                          });
    };
    return turn (settings.rateHz, 0) && turn (settings.depth, 1);
}

std::vector<std::string> Engine::clipNames() const
{
    const auto& own = *implementation_;
    const auto* const voice =
        own.newest != nullptr ? dynamic_cast<const InstrumentVoice*> (own.newest->voice.get()) : nullptr;
    return voice != nullptr ? voice->clipNames() : std::vector<std::string>();
}

void Engine::setSwell (double position) noexcept
{
    if (! std::isnan (position))
        implementation_->mailbox.swell.store (std::clamp (position, 0.0, 1.0), std::memory_order_relaxed);
}

double Engine::swell() const noexcept
{
    return implementation_->mailbox.swell.load (std::memory_order_relaxed);
}

bool Engine::key (int key, bool down, int division)
{
    return key >= 0 && division >= 0 && division < Keyboard::midiChannels
           && implementation_->mailbox.keys.push ({ key, down, Keyboard::ofDivision (division) });
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
    implementation_->collectReplaced();
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
    return own.kernel->stageLatencyFrames() + (own.newest != nullptr ? own.newest->voice->delayFrames() : 0);
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
