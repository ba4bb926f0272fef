// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/RoundedCycles.h"

#include "Tone/ChainClocks.h"
#include "Tone/EdgeTrain.h"
#include "Tone/FourierSeries.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <map>

namespace stopwright
{

namespace
{

constexpr double audibleHz = 20000.0;
constexpr double highestHarmonic = 8192.0;
constexpr int pointsPerSample = 16;
constexpr int mostTaps = StepKernel::mostTaps;

int harmonicsFor (double frequencyHz, double sampleRateHz) noexcept
{
    if (sampleRateHz < 4.0 * audibleHz)
        return static_cast<int> (std::clamp ((sampleRateHz - audibleHz) / frequencyHz, 1.0, highestHarmonic));

    // A power of two, so that all generators of an octave find the same table; between a quarter and half the rate.
    const double octaves = std::floor (std::log2 (0.5 * sampleRateHz / frequencyHz));
    return static_cast<int> (std::clamp (std::exp2 (octaves), 1.0, highestHarmonic));
}

std::shared_ptr<const CycleTable> tableFor (const Wave& wave, double frequencyHz, int harmonics)
{
    std::vector<std::complex<double>> coefficients;
    for (int n = 1; n <= harmonics; ++n)
        coefficients.push_back (fourierCoefficient (wave, n, frequencyHz));

    return std::make_shared<const CycleTable> (coefficients);
}

} // namespace

RoundedCycles::RoundedCycles (const Wave& wave,
                              const Tuning& tuning,
                              double sampleRateHz,
                              const StepKernel& kernel,
                              std::int64_t unitsPerSample)
    : kernel_ (&kernel),
      unitsPerSample_ (unitsPerSample)
{
    std::map<int, std::shared_ptr<const CycleTable>> shared;

    for (int chain = 0; chain < tuning.chainCount(); ++chain)
        for (int octave = 0; octave < Tuning::octavesPerChain; ++octave)
        {
            const double frequencyHz = tuning.frequencyHz ({ chain, octave });
            const int harmonics = harmonicsFor (frequencyHz, sampleRateHz);

            if (wave.tauUnit == TauUnit::seconds)
            {
                tables_.push_back (tableFor (wave, frequencyHz, harmonics));
                continue;
            }

            auto& table = shared[harmonics];
            if (table == nullptr)
                table = tableFor (wave, frequencyHz, harmonics);

            tables_.push_back (table);
        }
}

const CycleTable& RoundedCycles::of (Generator generator) const noexcept
{
    const int index = generator.chain * Tuning::octavesPerChain + generator.octavesBelowTop;
    return *tables_[static_cast<std::size_t> (index)];
}

void RoundedCycles::render (Generator generator, PeriodPhase start, int count, float* out) const noexcept
{
    const PeriodPhase late = start.shifted (-kernel_->delayFrames() * unitsPerSample_);
    of (generator).read (ChainClocks::periodFraction (late.phase, late.period),
                         ChainClocks::periodFraction (unitsPerSample_, late.period), count, out);
}

void RoundedCycles::remainder (Generator generator, PeriodPhase cut, float* out) const noexcept
{
    // The wave's last taps() samples up to the cut, as straight lines between points so close that what they leave out
    // is inaudible; a line's corner is a change of slope, of which the kernel knows the band-limited form.
    std::array<float, mostTaps * pointsPerSample + 1> points {};
    const int taps = kernel_->taps();
    const int last = taps * pointsPerSample;
    const PeriodPhase first = cut.shifted (-taps * unitsPerSample_);
    of (generator).read (ChainClocks::periodFraction (first.phase, first.period),
                         ChainClocks::periodFraction (unitsPerSample_, first.period) / pointsPerSample, last + 1,
                         points.data());
    const auto at = [&points] (int point) { return points[static_cast<std::size_t> (point)]; };

    const int delay = kernel_->delayFrames();
    std::fill_n (out, taps, 0.0F);
    for (int k = 0; k < delay; ++k)
        out[k] = at ((taps + 1 + k - delay) * pointsPerSample);

    EdgeTrain once { 0, 0, taps, 0, unitsPerSample_ };
    const auto add = [&] (const float* rows, float height)
    { addResiduals (out, once.frame + 1, once, rows, taps, height); };

    for (int point = 1; point < last; ++point)
    {
        once.frame = point / pointsPerSample - taps - 1;
        once.fraction = point % pointsPerSample * (unitsPerSample_ / pointsPerSample);
        add (kernel_->rampRows(), pointsPerSample * ((at (point + 1) - at (point)) - (at (point) - at (point - 1))));
    }

    once.frame = -1;
    once.fraction = 0;
    add (kernel_->stepRows(), -at (last));
    add (kernel_->rampRows(), -pointsPerSample * (at (last) - at (last - 1)));
}

} // namespace stopwright
