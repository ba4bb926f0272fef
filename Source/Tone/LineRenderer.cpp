// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/LineRenderer.h"

#include "Units/WideVector.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

STOPWRIGHT_WIDE
void drawLine (float* out, int count, float value, float slope) noexcept
{
    if (slope == 0.0F)
        std::fill_n (out, count, value);
    else
        for (int i = 0; i < count; ++i)
            out[i] = value + slope * static_cast<float> (i);
}

} // namespace

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

LineRenderer::Line LineRenderer::lineAt (const WaveCorners& wave, PeriodPhase at) const noexcept
{
    // A sample right at a corner still belongs to the line before it, as the kernel's rows have it.
    const std::int64_t phase = at.phase == 0 ? at.period : at.phase;
    const std::int64_t second = wave.count == 2 ? offsetOf (wave, 1, at.period) : at.period;
    const int corner = phase > second ? 1 : 0;
    const auto& begun = wave.corners[static_cast<std::size_t> (corner)];
    const std::int64_t sinceCorner = phase - (corner == 1 ? second : 0);
    const std::int64_t end = corner == 1 ? at.period : second;

    const double periods = static_cast<double> (sinceCorner) / static_cast<double> (at.period);
    return { begun.value + begun.slope * periods, begun.slope, corner, end - phase };
}

void LineRenderer::drawLines (const WaveCorners& wave, PeriodPhase start, int count, float* block) const noexcept
{
    const double slopePerSample = static_cast<double> (unitsPerSample_) / static_cast<double> (start.period);

    for (int done = 0; done < count;)
    {
        const Line line = lineAt (wave, start);
        const std::int64_t samples = std::min<std::int64_t> (line.unitsToEnd / unitsPerSample_ + 1, count - done);
        drawLine (block + done, static_cast<int> (samples), static_cast<float> (line.value),
                  static_cast<float> (line.slope * slopePerSample));
        done += static_cast<int> (samples);
        start = start.shifted (samples * unitsPerSample_);
    }
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
    std::fill_n (block - taps, taps, 0.0F);
    std::fill_n (block + count, taps, 0.0F);
    drawLines (wave, start.shifted (-kernel_->delayFrames() * unitsPerSample_), count, block);
    addCorners (wave, start, count, block);
}

void LineRenderer::remainder (const WaveCorners& wave, PeriodPhase cut, float* block) const noexcept
{
    const int taps = kernel_->taps();
    const int delay = kernel_->delayFrames();
    const PeriodPhase first = cut.shifted (unitsPerSample_);
    std::fill_n (block - taps, 3 * taps, 0.0F);
    drawLines (wave, first.shifted (-delay * unitsPerSample_), delay, block);

    // Corners before the cut, one frame before the first written; one right at it has no share in what is left.
    addCorners (wave, first, -1, block);

    const Line line = lineAt (wave, cut);
    const double slopePerSample = line.slope * static_cast<double> (unitsPerSample_) / static_cast<double> (cut.period);
    const EdgeTrain once { -1, 0, 2, 0, unitsPerSample_ };
    addResiduals (block, 0, once, kernel_->stepRows(), taps, static_cast<float> (-line.value));
    addResiduals (block, 0, once, kernel_->rampRows(), taps, static_cast<float> (-slopePerSample));
}

} // namespace stopwright
