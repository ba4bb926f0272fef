// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/CardVoice.h"

#include "Sound/CardNetwork.h"
#include "Sound/Decimator.h"
#include "Sound/HeldKeys.h"
#include "Sound/Pieces.h"
#include "Sound/TapBus.h"
#include "Tone/GeneratorBank.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace stopwright
{

namespace
{

int internalPieceFrames (const StreamSpec& spec)
{
    return Voice::pieceFrames * internalFactor (spec);
}

double internalRateHz (const StreamSpec& spec)
{
    return spec.deviceRateHz * internalFactor (spec);
}

} // namespace

struct CardVoice::Implementation
{
    Implementation (const Card& card, const KeySource& source, const StreamSpec& spec);

    int tapCount() const noexcept { return static_cast<int> (taps.size()); }

    double deviceRateHz;
    int lowestKey;
    int highestKey;
    CardNetwork circuit; // first of the heavy ones: it refuses an unsound card
    GeneratorBank generators;
    std::vector<std::unique_ptr<TapBus>> taps;
    std::vector<const double*> sources; ///< the taps' volts, as the network wants them
    std::vector<double> output;         ///< at the internal rate
    Decimator decimator;
    HeldKeys held;
    std::int64_t time = 0; ///< internal samples since every square rose
    bool hasFault = false;
};

CardVoice::Implementation::Implementation (const Card& card, const KeySource& source, const StreamSpec& spec)
    : deviceRateHz (spec.deviceRateHz),
      lowestKey (source.lowestKey),
      highestKey (source.highestKey),
      circuit (netlistOf (card), card.output, internalRateHz (spec)),
      generators (source.tuning, tapWavesOf (card).waves, internalRateHz (spec), internalPieceFrames (spec)),
      output (static_cast<std::size_t> (internalPieceFrames (spec))),
      decimator (spec.deviceRateHz, internalFactor (spec), pieceFrames)
{
    const std::vector<int> waveOfTap = tapWavesOf (card).waveOfTap;
    for (std::size_t tap = 0; tap < card.taps.size(); ++tap)
    {
        taps.push_back (
            std::make_unique<TapBus> (card.taps[tap], generators, waveOfTap[tap], source, internalPieceFrames (spec)));
        sources.push_back (taps.back()->volts());
    }
}

CardVoice::CardVoice (const Card& card, const KeySource& keySource, const StreamSpec& spec)
    : implementation_ (std::make_unique<Implementation> (card, keySource, spec))
{}

CardVoice::~CardVoice() = default;

// Knob numbers: first one for each tap's level, then the network's.

std::optional<int> CardVoice::findKnob (const PartKnob& knob) const
{
    if (const auto index = implementation_->circuit.findKnob (knob))
        return implementation_->tapCount() + *index;
    return {};
}

std::optional<int> CardVoice::findTapLevelKnob (const std::string& tapName) const
{
    const auto& taps = implementation_->taps;
    const auto found = std::ranges::find (taps, tapName, [] (const auto& tap) { return tap->name(); });
    if (found == taps.end())
        return {};
    return static_cast<int> (found - taps.begin());
}

int CardVoice::controlCount() const noexcept
{
    return implementation_->tapCount() + implementation_->circuit.knobCount();
}

void CardVoice::setControl (int index, double value) noexcept
{
    const int tapCount = implementation_->tapCount();
    if (index < 0 || ! std::isfinite (value))
        return;
    if (index < tapCount)
        implementation_->taps[static_cast<std::size_t> (index)]->setLevelTarget (value);
    else
        implementation_->circuit.setKnobTarget (index - tapCount, value);
}

bool CardVoice::controlsMove() const noexcept
{
    return implementation_->circuit.isMoving()
           || std::ranges::any_of (implementation_->taps, [] (const auto& tap) { return tap->levelIsMoving(); });
}

void CardVoice::process (std::span<const KeyEvent> events, std::span<double> volts) noexcept
{
    runInPieces (
        events, static_cast<int> (volts.size()),
        [this] (const KeyEvent& event, int frame) { key (0, event.key, event.down, frame); },
        [&] (int start, int count)
        { renderPiece (volts.subspan (static_cast<std::size_t> (start), static_cast<std::size_t> (count))); });
}

void CardVoice::key (int division, int key, bool down, int frameOffset) noexcept
{
    auto& own = *implementation_;
    if (division != 0 || key < own.lowestKey || key > own.highestKey || ! own.held.change (key, down))
        return;
    const int internalFrame = frameOffset * own.decimator.factor();
    for (const auto& tap : own.taps)
        tap->key (key, down, internalFrame);
}

void CardVoice::renderPiece (std::span<double> volts) noexcept
{
    auto& own = *implementation_;
    const int frames = static_cast<int> (volts.size()) * own.decimator.factor();
    own.generators.advance (frames);
    for (const auto& tap : own.taps)
        tap->render (own.generators, frames);

    own.circuit.process (own.sources, std::span (own.output).first (static_cast<std::size_t> (frames)));
    own.decimator.process (std::span (own.output).first (static_cast<std::size_t> (frames)), volts);
    own.time += frames;

    // Written so that NaN counts as a fault.
    if (! std::ranges::all_of (volts, [] (double value) { return std::abs (value) <= runawayVolts; }))
        own.hasFault = true;
}

void CardVoice::releaseAllKeys() noexcept
{
    for (int heldKey = 0; heldKey < HeldKeys::keyCount; ++heldKey)
        if (implementation_->held.isDown (heldKey))
            key (0, heldKey, false, 0);
}

int CardVoice::soundingKeys() const noexcept
{
    int most = 0;
    for (const auto& tap : implementation_->taps)
        most = std::max (most, tap->activeKeys());
    return most;
}

namespace
{

struct CardAdoption : Voice::Adoption
{
    std::vector<int> states;
    std::vector<int> taps; ///< per tap, the one of the same name in the other voice, or -1
};

} // namespace

std::unique_ptr<Voice::Adoption> CardVoice::prepareAdoption (const Voice& other) const
{
    const auto* const card = dynamic_cast<const CardVoice*> (&other);
    if (card == nullptr)
        return nullptr;
    auto adoption = std::make_unique<CardAdoption>();
    adoption->states = implementation_->circuit.adoptionMap (card->implementation_->circuit);
    for (const auto& tap : implementation_->taps)
        adoption->taps.push_back (card->findTapLevelKnob (tap->name()).value_or (-1));
    return adoption;
}

void CardVoice::adopt (const Voice& other, const Adoption* how) noexcept
{
    auto& own = *implementation_;
    own.time = other.time();
    own.generators.jumpTo (own.time);
    if (how == nullptr)
        return;

    const auto& adoption = static_cast<const CardAdoption&> (*how);
    const auto& old = *static_cast<const CardVoice&> (other).implementation_;
    own.held.copyWithin (old.held, own.lowestKey, own.highestKey);
    for (std::size_t tap = 0; tap < own.taps.size(); ++tap)
    {
        if (adoption.taps[tap] >= 0)
            own.taps[tap]->copyKeysFrom (*old.taps[static_cast<std::size_t> (adoption.taps[tap])]);
        own.taps[tap]->agreeWith (own.held);
    }

    if (old.hasFault)
        return;
    own.circuit.adoptStates (old.circuit, adoption.states);
    if (own.decimator.isLike (old.decimator))
        own.decimator.copyStateFrom (old.decimator);
}

std::int64_t CardVoice::time() const noexcept
{
    return implementation_->time;
}

bool CardVoice::hasFault() const noexcept
{
    return implementation_->hasFault;
}

int CardVoice::delayFrames() const noexcept
{
    return implementation_->decimator.delayFrames();
}

double CardVoice::latencySeconds() const noexcept
{
    return delayFrames() / implementation_->deviceRateHz;
}

void CardVoice::reset() noexcept
{
    auto& own = *implementation_;
    own.time = 0;
    own.generators.restart();
    own.held.clear();
    for (const auto& tap : own.taps)
        tap->reset();
    own.circuit.reset();
    own.decimator.reset();
    own.hasFault = false;
}

} // namespace stopwright
