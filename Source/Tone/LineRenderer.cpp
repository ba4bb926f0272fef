// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/LineRenderer.h"

#include "Tone/EdgeTrain.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

PeriodPhase PeriodPhase::shifted (std::int64_t units) const noexcept
{
    std::int64_t moved = (phase + units) % period;
    if (moved < 0)
        moved += period;

    return { period, moved };
}

LineRenderer::LineRenderer (const StepKernel& kernel, std::int64_t unitsPerSample) noexcept
    : kernel_ (&kernel),
      unitsPerSample_ (unitsPerSample)
{}

std::int64_t LineRenderer::offsetOf (const WaveCorners& wave, int corner, std::int64_t period) const noexcept
{
    const double phase = wave.corners[static_cast<std::size_t> (corner)].phase;
    return static_cast<std::int64_t> (std::llround (phase * static_cast<double> (period)));
}

LineTrain LineRenderer::linesFrom (const WaveCorners& wave, PeriodPhase start) const noexcept
{
    // A sample right at a corner still belongs to the line before it, as the kernel's rows have it.
    const std::int64_t phase = start.phase == 0 ? start.period : start.phase;
    const std::int64_t second = wave.count == 2 ? offsetOf (wave, 1, start.period) : start.period;
    const double perUnit = 1.0 / static_cast<double> (start.period);
    const auto lineOf = [perUnit] (const WaveCorners::Corner& corner, std::int64_t units) {
        return LineTrain::Line { units, corner.value, corner.slope * perUnit };
    };

    LineTrain train;
    train.lines = { lineOf (wave.corners[0], second), lineOf (wave.corners[1], start.period - second) };
    train.first = phase > second ? 1 : 0;
    train.since = phase - (train.first == 1 ? second : 0);
    train.unitsPerSample = unitsPerSample_;
    return train;
}

void LineRenderer::addCorners (const WaveCorners& wave,
                               PeriodPhase start,
                               std::int64_t endFrame,
                               float* block) const noexcept
{
    const int taps = kernel_->taps();
    const double samplesPerPeriod = static_cast<double> (start.period) / static_cast<double> (unitsPerSample_);
    EdgeTrain train { 0, 0, start.period / unitsPerSample_, start.period % unitsPerSample_, unitsPerSample_ };

    for (int c = 0; c < wave.count; ++c)
    {
        // From the first corner that still reaches into the block: later than taps frames before it.
        const PeriodPhase since = start.shifted (-offsetOf (wave, c, start.period) - taps * unitsPerSample_);
        const std::int64_t wait = since.period - since.phase;
        train.frame = wait / unitsPerSample_ - taps;
        train.fraction = wait % unitsPerSample_;

        const auto& corner = wave.corners[static_cast<std::size_t> (c)];
        if (corner.jump != 0.0)
            addResiduals (block, endFrame, train, kernel_->stepRows(), taps, static_cast<float> (corner.jump));

        if (corner.slopeChange != 0.0)
            addResiduals (block, endFrame, train, kernel_->rampRows(), taps,
                          static_cast<float> (corner.slopeChange / samplesPerPeriod));
    }
}

void LineRenderer::render (const WaveCorners& wave, PeriodPhase start, int count, float* block) const noexcept
{
    const int taps = kernel_->taps();
    // Before the tails are made zero: the lines run over into the one behind.
    drawLines (block, count, linesFrom (wave, start.shifted (-kernel_->delayFrames() * unitsPerSample_)));
    std::fill_n (block - taps, taps, 0.0F);
    std::fill_n (block + count, taps, 0.0F);
    addCorners (wave, start, count, block);
}

void LineRenderer::remainder (const WaveCorners& wave, PeriodPhase cut, float* block) const noexcept
{
    const int taps = kernel_->taps();
    const int delay = kernel_->delayFrames();
    const PeriodPhase first = cut.shifted (unitsPerSample_);
    drawLines (block, delay, linesFrom (wave, first.shifted (-delay * unitsPerSample_)));
    std::fill_n (block - taps, taps, 0.0F);
    std::fill_n (block + delay, 2 * taps - delay, 0.0F);

    // Corners before the cut, one frame before the first written; one right at it has no share in what is left.
    addCorners (wave, first, -1, block);

    const LineTrain lines = linesFrom (wave, cut);
    const auto& line = lines.lines[static_cast<std::size_t> (lines.first)];
    const double value = line.value + line.perUnit * static_cast<double> (lines.since);
    const double slopePerSample = line.perUnit * static_cast<double> (unitsPerSample_);
    const EdgeTrain once { -1, 0, 2, 0, unitsPerSample_ };
    addResiduals (block, 0, once, kernel_->stepRows(), taps, static_cast<float> (-value));
    addResiduals (block, 0, once, kernel_->rampRows(), taps, static_cast<float> (-slopePerSample));
}

} // namespace stopwright
