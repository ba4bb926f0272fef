// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/GeneratorBank.h"

#include "Tone/ChainClocks.h"
#include "Tone/LineRenderer.h"
#include "Tone/MixLoops.h"
#include "Tone/RoundedCycles.h"
#include "Tone/StepKernel.h"
#include "Tone/WaveCorners.h"
#include "Units/Error.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>

namespace stopwright
{

namespace
{

constexpr std::size_t mostRanks = 8;

bool isPlainSquare (const Wave& wave) noexcept
{
    return (wave.kind == WaveKind::square || wave.kind == WaveKind::pulse) && wave.duty == 0.5;
}

/// One wave as the bank keeps it: lines, or tables, or a sum of the plain squares.
struct Shape
{
    Wave wave;
    WaveCorners lines;
    std::optional<RoundedCycles> cycles;
};

} // namespace

struct GeneratorBank::Implementation
{
    Implementation (const Tuning& tuningToUse, const std::vector<Wave>& waves, double rateHz, int mostFrames);

    std::size_t slotOf (int waveIndex, Generator generator) const noexcept;
    bool exists (int waveIndex, Generator generator) const noexcept;

    float* blockOf (std::size_t slot) noexcept
    {
        return samples.data() + slot * stride + static_cast<std::size_t> (kernel.taps());
    }

    const float* rendered (int waveIndex, Generator generator) noexcept;
    void renderStaircase (const Wave& wave, Generator generator, float* out) noexcept;
    void cut (const Shape& shape, Generator generator, int frame, float* out) const noexcept;

    Tuning tuning;
    double sampleRateHz;
    int maxFrames;
    StepKernel kernel;
    ChainClocks clocks;
    LineRenderer renderer;
    std::vector<Shape> shapes;
    int squareIndex = -1; ///< of the plain square that staircases add up
    int frameCount = 0;
    std::uint64_t blockNumber = 1;
    std::size_t stride;
    std::vector<float> samples;
    std::vector<std::uint64_t> renderedInBlock;
    std::vector<float> cutting; ///< one remainder with room around it
};

GeneratorBank::Implementation::Implementation (const Tuning& tuningToUse,
                                               const std::vector<Wave>& waves,
                                               double rateHz,
                                               int mostFrames)
    : tuning (tuningToUse),
      sampleRateHz (rateHz),
      maxFrames (mostFrames),
      kernel (rateHz),
      clocks (tuning.timeBase (rateHz)),
      renderer (kernel, clocks.unitsPerSample())
{
    bool needsSquare = false;
    for (const Wave& wave : waves)
    {
        wave.check();
        needsSquare = needsSquare || wave.kind == WaveKind::staircase;
        Shape shape { wave, WaveCorners::of (wave), std::nullopt };
        if (wave.kind == WaveKind::rounded)
            shape.cycles.emplace (wave, tuning, rateHz, kernel, clocks.unitsPerSample());
        if (isPlainSquare (wave))
            squareIndex = static_cast<int> (shapes.size());
        shapes.push_back (std::move (shape));
    }

    if (needsSquare && squareIndex < 0)
    {
        squareIndex = static_cast<int> (shapes.size());
        shapes.push_back ({ Wave {}, WaveCorners::of (Wave {}), std::nullopt });
    }

    const auto taps = static_cast<std::size_t> (kernel.taps());
    stride = (static_cast<std::size_t> (maxFrames) + 2 * taps + 15) / 16 * 16;
    const std::size_t slots = shapes.size() * static_cast<std::size_t> (tuning.chainCount())
                              * static_cast<std::size_t> (Tuning::octavesPerChain);
    samples.resize (slots * stride);
    renderedInBlock.resize (slots);
    cutting.resize (3 * taps);
}

std::size_t GeneratorBank::Implementation::slotOf (int waveIndex, Generator generator) const noexcept
{
    const int row = waveIndex * tuning.chainCount() + generator.chain;
    return static_cast<std::size_t> (row) * static_cast<std::size_t> (Tuning::octavesPerChain)
           + static_cast<std::size_t> (generator.octavesBelowTop);
}

bool GeneratorBank::Implementation::exists (int waveIndex, Generator generator) const noexcept
{
    return waveIndex >= 0 && waveIndex < static_cast<int> (shapes.size()) && generator.chain >= 0
           && generator.chain < tuning.chainCount() && generator.octavesBelowTop >= 0
           && generator.octavesBelowTop < Tuning::octavesPerChain;
}

const float* GeneratorBank::Implementation::rendered (int waveIndex, Generator generator) noexcept
{
    const std::size_t slot = slotOf (waveIndex, generator);
    float* const out = blockOf (slot);
    if (renderedInBlock[slot] == blockNumber)
        return out;

    renderedInBlock[slot] = blockNumber;
    const Shape& shape = shapes[static_cast<std::size_t> (waveIndex)];

    if (shape.lines.count > 0)
        renderer.render (shape.lines, clocks.phaseOf (generator), frameCount, out);
    else if (shape.cycles)
        shape.cycles->render (generator, clocks.phaseOf (generator), frameCount, out);
    else
        renderStaircase (shape.wave, generator, out);

    return out;
}

void GeneratorBank::Implementation::renderStaircase (const Wave& wave, Generator generator, float* out) noexcept
{
    std::array<const float*, mostRanks> squares {};
    std::array<float, mostRanks> weights {};
    std::size_t count = 0;

    for (int rank = 0; rank < wave.ranks; ++rank)
        if (const auto sounding = tuning.octavesAbove (generator, rank))
        {
            squares[count] = rendered (squareIndex, *sounding);
            weights[count] = static_cast<float> (wave.rankWeight (rank));
            ++count;
        }

    std::fill_n (out, frameCount, 0.0F);
    addWeighted (out, squares.data(), weights.data(), static_cast<int> (count), frameCount);
}

void GeneratorBank::Implementation::cut (const Shape& shape, Generator generator, int frame, float* out) const noexcept
{
    const PeriodPhase at = clocks.phaseOf (generator).shifted (frame * clocks.unitsPerSample());

    if (shape.cycles)
        shape.cycles->remainder (generator, at, out);
    else
        renderer.remainder (shape.lines, at, out);
}

GeneratorBank::GeneratorBank (const Tuning& tuning, const std::vector<Wave>& waves, double sampleRateHz, int maxFrames)
{
    if (! (sampleRateHz >= 44100.0 && sampleRateHz <= 1.0e7))
        throw Error ("Generators run at 44.1 kHz or above, not at " + std::to_string (sampleRateHz) + " Hz.");

    if (maxFrames < 1 || maxFrames > 65536)
        throw Error ("A block of generators has 1 to 65536 frames, not " + std::to_string (maxFrames) + ".");

    for (int chain = 0; chain < tuning.chainCount(); ++chain)
        if (! (tuning.frequencyHz ({ chain, 0 }) < 0.5 * sampleRateHz))
            throw Error ("A generator of " + std::to_string (tuning.frequencyHz ({ chain, 0 }))
                         + " Hz needs a sample rate of more than twice that: lower the highest generator.");

    implementation_ = std::make_unique<Implementation> (tuning, waves, sampleRateHz, maxFrames);
}

GeneratorBank::~GeneratorBank() = default;

const Tuning& GeneratorBank::tuning() const noexcept
{
    return implementation_->tuning;
}

double GeneratorBank::sampleRateHz() const noexcept
{
    return implementation_->sampleRateHz;
}

int GeneratorBank::delayByFrames() const noexcept
{
    return implementation_->kernel.delayFrames();
}

void GeneratorBank::advance (int frameCount) noexcept
{
    implementation_->clocks.moveOn (implementation_->frameCount);
    implementation_->frameCount = std::clamp (frameCount, 0, implementation_->maxFrames);
    ++implementation_->blockNumber;
}

std::span<const float> GeneratorBank::wave (int waveIndex, Generator generator) noexcept
{
    if (! implementation_->exists (waveIndex, generator))
        return {};

    return { implementation_->rendered (waveIndex, generator), static_cast<std::size_t> (implementation_->frameCount) };
}

void GeneratorBank::remainder (int waveIndex, Generator generator, int frameOffset, std::span<float> out) noexcept
{
    std::fill (out.begin(), out.end(), 0.0F);
    if (! implementation_->exists (waveIndex, generator))
        return;

    auto& bank = *implementation_;
    const auto taps = static_cast<std::size_t> (bank.kernel.taps());
    const std::size_t count = std::min (out.size(), taps);
    float* const cutting = bank.cutting.data() + taps;
    const Shape& shape = bank.shapes[static_cast<std::size_t> (waveIndex)];

    if (shape.lines.count > 0 || shape.cycles)
    {
        bank.cut (shape, generator, frameOffset, cutting);
        std::copy_n (cutting, count, out.begin());
        return;
    }

    const Shape& square = bank.shapes[static_cast<std::size_t> (bank.squareIndex)];
    for (int rank = 0; rank < shape.wave.ranks; ++rank)
        if (const auto sounding = bank.tuning.octavesAbove (generator, rank))
        {
            bank.cut (square, *sounding, frameOffset, cutting);
            addScaled (out.data(), cutting, static_cast<float> (shape.wave.rankWeight (rank)),
                       static_cast<int> (count));
        }
}

void GeneratorBank::restart() noexcept
{
    jumpTo (0);
}

void GeneratorBank::jumpTo (std::int64_t sampleIndex) noexcept
{
    implementation_->clocks.jumpTo (sampleIndex);
    implementation_->frameCount = 0;
    ++implementation_->blockNumber;
}

} // namespace stopwright
