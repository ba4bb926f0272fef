// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Tone/Tuning.h"
#include "Tone/Wave.h"

#include <cstdint>
#include <memory>
#include <span>
#include <vector>

namespace stopwright
{

/// Every generator of the instrument, running for ever and phase-locked, each shape band-limited once per block and
/// shared by all keys that sound it.
///
/// Only what is asked for in a block is rendered; phases go on for all of them in whole time units whether rendered or
/// not, so nothing depends on when a key was pressed. All waves come out delayByFrames late (half the band-limiting kernel).
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class GeneratorBank
{
public:
    /// `waves` are the distinct shapes that will be asked for, by index. Takes 4 bytes for each of waves x chains x 11 x
    /// maxFrames. Range: rate from 44.1 kHz, maxFrames 1 .. 65536. Fails: Error on a wave, rate or size out of range, and
    /// when the highest generator is not below half the sample rate.
    GeneratorBank (const Tuning& tuning, const std::vector<Wave>& waves, double sampleRateHz, int maxFrames);
    ~GeneratorBank();
    GeneratorBank (const GeneratorBank&) = delete;
    GeneratorBank& operator= (const GeneratorBank&) = delete;
    GeneratorBank (GeneratorBank&&) = delete;
    GeneratorBank& operator= (GeneratorBank&&) = delete;

    const Tuning& tuning() const noexcept;
    double sampleRateHz() const noexcept;
    int delayByFrames() const noexcept;

    /// Moves time on to the next block of `frameCount` samples (0 .. maxFrames); earlier spans become invalid.
    void advance (int frameCount) noexcept;

    /// The unit wave of one generator over the block begun by the last advance. Volts per volt peak to peak.
    std::span<const float> wave (int waveIndex, Generator generator) noexcept;

    /// What still comes out after the wave is cut off dead at frame `frameOffset` of the block, from the frame after it
    /// on: the band-limited wave (t) * (1 - step (t)), 2 delayByFrames() frames long, after which it is zero.
    void remainder (int waveIndex, Generator generator, int frameOffset, std::span<float> out) noexcept;

    /// Back to time zero, where every square rises.
    void restart() noexcept;

    /// The next block begins `sampleIndex` samples after time zero. Phases are exact at any count.
    void jumpTo (std::int64_t sampleIndex) noexcept;

private:
    struct Implementation;
    std::unique_ptr<Implementation> implementation_;
};

} // namespace stopwright
