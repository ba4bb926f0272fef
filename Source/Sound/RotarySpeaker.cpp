// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/RotarySpeaker.h"

#include <algorithm>
#include <array>
#include <memory>

namespace stopwright
{

namespace
{

constexpr std::size_t pieceFrames = 64;

} // namespace

RotarySpeaker::RotarySpeaker (const RotarySettings& settings, bool isFast, double deviceRateHz)
    : RotarySpeaker (settings, isFast, deviceRateHz, std::make_shared<const FractionalKernel> (deviceRateHz))
{}

RotarySpeaker::RotarySpeaker (const RotarySettings& settings,
                              bool isFast,
                              double deviceRateHz,
                              const std::shared_ptr<const FractionalKernel>& kernel)
    : latencyFrames_ (std::max (CirclingSource::leastLatencyFrames (settings.horn, *kernel, deviceRateHz),
                                CirclingSource::leastLatencyFrames (settings.drum, *kernel, deviceRateHz))),
      crossover_ (settings.crossoverHz, deviceRateHz),
      horn_ (settings.horn, hornPlace, isFast, kernel, latencyFrames_, deviceRateHz),
      drum_ (settings.drum, drumPlace, isFast, kernel, latencyFrames_, deviceRateHz)
{}

void RotarySpeaker::setFast (bool isFast) noexcept
{
    horn_.setFast (isFast);
    drum_.setFast (isFast);
}

void RotarySpeaker::process (std::span<double> samples) noexcept
{
    std::array<double, pieceFrames> treble {};
    while (! samples.empty())
    {
        const auto bass = samples.first (std::min (samples.size(), pieceFrames));
        const auto high = std::span (treble).first (bass.size());
        crossover_.process (bass, bass, high);
        horn_.process (high);
        drum_.process (bass);
        for (std::size_t i = 0; i < bass.size(); ++i)
            bass[i] += high[i];
        samples = samples.subspan (bass.size());
    }
}

void RotarySpeaker::reset() noexcept
{
    crossover_.reset();
    horn_.reset();
    drum_.reset();
}

bool RotarySpeaker::isLike (const RotarySpeaker& other) const noexcept
{
    return horn_.isLike (other.horn_) && drum_.isLike (other.drum_);
}

void RotarySpeaker::copyStateFrom (const RotarySpeaker& other) noexcept
{
    crossover_.copyStateFrom (other.crossover_);
    horn_.copyStateFrom (other.horn_);
    drum_.copyStateFrom (other.drum_);
}

} // namespace stopwright
