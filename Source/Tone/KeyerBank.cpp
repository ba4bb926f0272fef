// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/KeyerBank.h"

#include "Tone/KeyGate.h"
#include "Tone/MixLoops.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

namespace stopwright
{

namespace
{

/// Everything one key has on one bus.
struct Key
{
    std::optional<Generator> generator;
    KeyGate gate;
    int tailFrames = 0;      ///< left of what a contact adds
    std::vector<float> tail; ///< from the next frame on

    bool isMoving() const noexcept { return gate.isMoving() || gate.hasEvents() || tailFrames > 0; }
};

/// A key that lets its generator through as it did before.
struct SteadyKey
{
    Generator generator;
    float gain = 0.0F;
};

} // namespace

struct KeyerBank::Implementation
{
    Implementation (const GeneratorBank& bank, int wave, const KeyerSettings& settings);

    void post (int key, bool down, int frame) noexcept;

    float gainOf (const Key& key) const noexcept
    {
        return static_cast<float> (bleed + (1.0 - bleed) * key.gate.openness());
    }

    void mixUnsettled (std::span<float> bus, float gain, GeneratorBank& bank) noexcept;
    void mixSteady (std::span<float> bus, float gain, GeneratorBank& bank) const noexcept;
    void mixMoving (Key& key, const float* wave, std::span<float> bus, float gain, GeneratorBank& bank) noexcept;
    void mixSpan (Key& key, const float* wave, float* bus, int count, float gain) const noexcept;
    void mixGate (Key& key, const float* wave, float* bus, int count, float gain) const noexcept;
    void mixTail (Key& key, float* bus, int count, float gain) const noexcept;
    void begin (Key& key, KeyGate::Event event, GeneratorBank& bank) noexcept;

    int waveIndex;
    double bleed;
    GateShape shape;
    std::array<Key, keyCount> keys;
    std::vector<float> remainder;
    std::array<SteadyKey, keyCount> steady; ///< the first steadyCount
    std::size_t steadyCount = 0;
    bool isSettled = false; ///< no gate moves, so that `steady` still holds
};

KeyerBank::Implementation::Implementation (const GeneratorBank& bank, int wave, const KeyerSettings& settings)
    : waveIndex (wave),
      bleed (fromDecibels (settings.bleedDb)),
      shape (settings, bank.sampleRateHz())
{
    const auto taps = 2 * static_cast<std::size_t> (bank.delayByFrames());
    remainder.resize (taps);
    if (settings.shape == KeyerShape::contact)
        for (Key& key : keys)
            key.tail.resize (taps);
}

void KeyerBank::Implementation::post (int key, bool down, int frame) noexcept
{
    if (key >= 0 && key < keyCount && keys[static_cast<std::size_t> (key)].generator)
    {
        keys[static_cast<std::size_t> (key)].gate.post (down, std::max (frame, 0));
        isSettled = false;
    }
}

void KeyerBank::Implementation::begin (Key& key, KeyGate::Event event, GeneratorBank& bank) noexcept
{
    const double before = key.gate.openness();
    key.gate.begin (event.down, shape);
    if (shape.kind() != KeyerShape::contact)
        return;

    // Opening the contact leaves the remainder to come; closing it, all but the remainder has yet to come.
    bank.remainder (waveIndex, *key.generator, event.frame, remainder);
    const double height = (1.0 - bleed) * (before - key.gate.openness());
    addScaled (key.tail.data(), remainder.data(), static_cast<float> (height), static_cast<int> (remainder.size()));
    key.tailFrames = static_cast<int> (remainder.size());
}

void KeyerBank::Implementation::mixGate (Key& key, const float* wave, float* bus, int count, float gain) const noexcept
{
    std::array<float, GateShape::chunkFrames> gains {};

    for (int done = 0; done < count;)
    {
        if (! key.gate.isMoving())
        {
            addScaled (bus + done, wave + done, gain * gainOf (key), count - done);
            return;
        }

        const int run = std::min (count - done, GateShape::chunkFrames);
        key.gate.run (shape, gains.data(), run);
        const auto bleedGain = static_cast<float> (bleed);
        for (int i = 0; i < run; ++i)
            gains[static_cast<std::size_t> (i)] = bleedGain + (1.0F - bleedGain) * gains[static_cast<std::size_t> (i)];

        addShaped (bus + done, wave + done, gains.data(), gain, run);
        done += run;
    }
}

void KeyerBank::Implementation::mixTail (Key& key, float* bus, int count, float gain) const noexcept
{
    const int run = std::min (count, key.tailFrames);
    addScaled (bus, key.tail.data(), gain, run);
    std::copy (key.tail.begin() + run, key.tail.end(), key.tail.begin());
    std::fill (key.tail.end() - run, key.tail.end(), 0.0F);
    key.tailFrames -= run;
}

void KeyerBank::Implementation::mixSpan (Key& key, const float* wave, float* bus, int count, float gain) const noexcept
{
    mixGate (key, wave, bus, count, gain);
    if (key.tailFrames > 0)
        mixTail (key, bus, count, gain);
}

void KeyerBank::Implementation::mixMoving (Key& key,
                                           const float* wave,
                                           std::span<float> bus,
                                           float gain,
                                           GeneratorBank& bank) noexcept
{
    const auto frames = static_cast<int> (bus.size());
    int done = 0;

    while (key.gate.hasEventBefore (frames))
    {
        // The frame of the event itself is still as before.
        const KeyGate::Event event = key.gate.takeEvent();
        const int end = std::max (done, event.frame + 1);
        mixSpan (key, wave + done, bus.data() + done, end - done, gain);
        done = end;
        begin (key, event, bank);
    }

    mixSpan (key, wave + done, bus.data() + done, frames - done, gain);
    key.gate.moveEventsBy (frames);
}

/// Mixes the keys that move and finds those that do not.
void KeyerBank::Implementation::mixUnsettled (std::span<float> bus, float gain, GeneratorBank& bank) noexcept
{
    steadyCount = 0;
    isSettled = true;
    for (Key& key : keys)
    {
        if (! key.generator || (key.gate.isAtRest() && key.tailFrames == 0 && bleed == 0.0))
            continue;

        const float* const wave = bank.wave (waveIndex, *key.generator).data();
        if (wave == nullptr)
            continue;

        if (key.isMoving())
        {
            isSettled = false;
            mixMoving (key, wave, bus, gain, bank);
            continue;
        }
        steady[steadyCount] = { *key.generator, gainOf (key) };
        ++steadyCount;
    }
}

void KeyerBank::Implementation::mixSteady (std::span<float> bus, float gain, GeneratorBank& bank) const noexcept
{
    std::array<const float*, keyCount> waves {};
    std::array<float, keyCount> gains {};
    for (std::size_t index = 0; index < steadyCount; ++index)
    {
        waves[index] = bank.wave (waveIndex, steady[index].generator).data();
        gains[index] = gain * steady[index].gain;
    }
    addWeighted (bus.data(), waves.data(), gains.data(), static_cast<int> (steadyCount), static_cast<int> (bus.size()));
}

KeyerBank::KeyerBank (const GeneratorBank& bank,
                      int waveIndex,
                      const Footage& footage,
                      const KeyerSettings& settings,
                      int lowestKey,
                      int highestKey)
{
    settings.check();
    if (lowestKey < 0 || highestKey >= keyCount)
        throw Error ("The keys of a keyer bank lie between 0 and 127.");

    implementation_ = std::make_unique<Implementation> (bank, waveIndex, settings);
    for (int key = lowestKey; key <= highestKey; ++key)
        implementation_->keys[static_cast<std::size_t> (key)].generator = bank.tuning().generatorFor (key, footage);
}

KeyerBank::~KeyerBank() = default;

void KeyerBank::keyDown (int key, int frameOffset) noexcept
{
    implementation_->post (key, true, frameOffset);
}

void KeyerBank::keyUp (int key, int frameOffset) noexcept
{
    implementation_->post (key, false, frameOffset);
}

void KeyerBank::mixInto (std::span<float> bus, float gain, GeneratorBank& bank) noexcept
{
    if (! implementation_->isSettled)
        implementation_->mixUnsettled (bus, gain, bank);
    implementation_->mixSteady (bus, gain, bank);
}

int KeyerBank::activeKeys() const noexcept
{
    return static_cast<int> (std::count_if (implementation_->keys.begin(), implementation_->keys.end(),
                                            [] (const Key& key)
                                            { return ! key.gate.isAtRest() || key.tailFrames > 0; }));
}

void KeyerBank::copyStateFrom (const KeyerBank& other) noexcept
{
    const auto& from = *other.implementation_;
    if (from.shape.kind() != implementation_->shape.kind())
        return;
    implementation_->isSettled = false;

    for (std::size_t index = 0; index < from.keys.size(); ++index)
    {
        Key& key = implementation_->keys[index];
        const Key& source = from.keys[index];
        if (! key.generator)
            continue;

        key.gate = source.gate;
        key.tailFrames = std::min (source.tailFrames, static_cast<int> (key.tail.size()));
        std::copy_n (source.tail.begin(), std::min (source.tail.size(), key.tail.size()), key.tail.begin());
    }
}

void KeyerBank::reset() noexcept
{
    implementation_->isSettled = false;
    for (Key& key : implementation_->keys)
    {
        key.gate = {};
        key.tailFrames = 0;
        std::fill (key.tail.begin(), key.tail.end(), 0.0F);
    }
}

} // namespace stopwright
