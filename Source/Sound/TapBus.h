// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/KeySource.h"
#include "Sound/HeldKeys.h"
#include "Sound/LinearRamp.h"
#include "Tone/KeyerBank.h"

#include <string>
#include <vector>

namespace stopwright
{

/// One tap of a sounding card: the keyers of its bus and the volts they put before the tap's source resistance.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class TapBus
{
public:
    /// The most a level can be turned to, volts peak to peak.
    static constexpr double highestLevel = 1e4;

    TapBus (const Tap& tap, const GeneratorBank& generators, int waveIndex, const KeySource& source, int maxFrames);

    const std::string& name() const noexcept { return name_; }

    /// Volts peak to peak, ramped. Units/range: 0 .. highestLevel, clamped.
    void setLevelTarget (double voltsPeakToPeak) noexcept;

    bool levelIsMoving() const noexcept { return level_.isMoving(); }

    void key (int key, bool down, int frameOffset) noexcept;

    int activeKeys() const noexcept { return keyers_.activeKeys(); }

    /// Works out the block that the generators have begun.
    void render (GeneratorBank& generators, int frameCount) noexcept;

    /// The last block rendered; the place in memory stays the same.
    const double* volts() const noexcept { return volts_.data(); }

    /// Where each gate of another bus stands.
    void copyKeysFrom (const TapBus& other) noexcept { keyers_.copyStateFrom (other.keyers_); }

    /// Presses and releases keys until exactly the held ones are down.
    void agreeWith (const HeldKeys& held) noexcept;

    void reset() noexcept;

private:
    std::string name_;
    double polarity_;
    KeyerBank keyers_;
    LinearRamp level_;
    std::vector<float> bus_;
    std::vector<double> volts_;
};

} // namespace stopwright
