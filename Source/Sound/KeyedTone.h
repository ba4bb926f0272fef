// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/KeyedBus.h"
#include "Sound/HeldKeys.h"
#include "Sound/LinearRamp.h"
#include "Tone/KeyerBank.h"

#include <optional>
#include <span>
#include <vector>

namespace stopwright
{

/// The tone of one keyed bus as the keys of one division let it through, for all stops of the division that tap it.
///
/// Volts per volt peak to peak of one key, at the internal rate. A bus with a collector resistor for each key sags with
/// the number of keys that are down (see KeyedBus); the sag follows within the keyer's attack.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class KeyedTone
{
public:
    struct Settings
    {
        int waveIndex = 0; ///< in the generators
        Footage footage = Footage::parse ("8");
        KeyerSettings keyer;
        int lowestKey = 36;
        int highestKey = 96;
        double sag = 0.0;  ///< Rl / Rc of the bus; 0 for none
        int downDelay = 0; ///< internal samples from the key to this contact closing
        int upDelay = 0;   ///< and opening
    };

    /// `maxFrames` is the most of one render; `carryFrames` the most that is kept of those before.
    KeyedTone (const GeneratorBank& generators, const Settings& settings, int maxFrames, int carryFrames);

    void key (int key, bool down, int frameOffset) noexcept;

    /// Puts the block that the generators have begun behind `carry` frames that are kept.
    void render (GeneratorBank& generators, int carry, int frameCount) noexcept;

    /// Moves `count` frames from `from` on to the front, to be the carry of the next render.
    void keep (int from, int count) noexcept;

    /// The frames kept and rendered; the place in memory stays the same.
    const double* volts() const noexcept { return volts_.data(); }

    int activeKeys() const noexcept { return keyers_.activeKeys(); }

    /// Goes on where a tone of the same wave and footage is.
    void copyKeysFrom (const KeyedTone& other) noexcept;

private:
    double sagFactor() const noexcept;

    Settings settings_;
    KeyerBank keyers_;
    HeldKeys held_;
    int heldCount_ = 0;
    LinearRamp sag_;
    std::vector<float> bus_;
    std::vector<double> volts_;
};

} // namespace stopwright
