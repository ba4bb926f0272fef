// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Tone/GeneratorBank.h"
#include "Tone/KeyerSettings.h"

#include <memory>
#include <span>

namespace stopwright
{

/// The keyers of one keyed bus: one gate per key between a generator's wave and the bus, which adds them up. A key
/// whose generator does not exist is silent. All keys may sound at once.
///
/// Soft gates multiply: y = gain (t) wave (t). A contact that closes at t0 is an edge of its own: what comes out is the
/// band-limited wave (t) step (t - t0), late by half the kernel like everything else; see GeneratorBank::remainder.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class KeyerBank
{
public:
    static constexpr int keyCount = 128; ///< key numbers are MIDI numbers

    /// Fails: Error on settings out of range or a compass that is not within 0 .. 127.
    KeyerBank (const GeneratorBank& bank,
               int waveIndex,
               const Footage& footage,
               const KeyerSettings& settings,
               int lowestKey = 0,
               int highestKey = 127);
    ~KeyerBank();
    KeyerBank (const KeyerBank&) = delete;
    KeyerBank& operator= (const KeyerBank&) = delete;
    KeyerBank (KeyerBank&&) = delete;
    KeyerBank& operator= (KeyerBank&&) = delete;

    /// A key goes down or up `frameOffset` samples into the block that will be mixed next; what lies beyond its end waits
    /// for the blocks after it. Repeats are harmless, keys outside the compass are ignored.
    void keyDown (int key, int frameOffset) noexcept;
    void keyUp (int key, int frameOffset) noexcept;

    /// Adds what all gates let through, times `gain`, to `bus` over the bank's current block. bus.size() is the block.
    void mixInto (std::span<float> bus, float gain, GeneratorBank& bank) noexcept;

    /// Number of keys whose gate is not at rest. Threading: [audio].
    int activeKeys() const noexcept;

    /// Every gate goes on where the gate of the same key of `other` is. Keyers of another shape are left as they are, and
    /// so is a key that has no generator here.
    void copyStateFrom (const KeyerBank& other) noexcept;

    /// All gates shut at once.
    void reset() noexcept;

private:
    struct Implementation;
    std::unique_ptr<Implementation> implementation_;
};

} // namespace stopwright
