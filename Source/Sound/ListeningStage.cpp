// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/ListeningStage.h"

#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stopwright
{

namespace
{

constexpr double releaseDbPerSecond = 60.0;
constexpr double fadeFloor = 1e-3;

// Beyond this it is no sound but a network running away; and the gain below it stays far from the end of double.
constexpr double largestSample = 1e12;

// Below this a device has long run out of bits; and it keeps subnormal numbers from the driver.
constexpr float smallestSample = 1e-20F;

std::size_t lookAheadFrames (double rateHz)
{
    return static_cast<std::size_t> (std::max (1.0, std::round (ListeningStage::lookAheadSeconds * rateHz)));
}

} // namespace

// A sample is heard one look-ahead after it came in, under the mean of as many gains that came in after it; each of those
// is the least over one frame more, so that the sample's own gain is among them.
ListeningStage::ListeningStage (double rateHz, double levelDb)
    : rateHz_ (rateHz),
      rise_ (fromDecibels (highestRiseDbPerSecond / rateHz)),
      release_ (fromDecibels (releaseDbPerSecond / rateHz)),
      ceiling_ (static_cast<float> (fromDecibels (ceilingDb))),
      level_ (fromDecibels (levelDb)),
      levelTarget_ (level_),
      loudness_ (rateHz),
      minimum_ (lookAheadFrames (rateHz) + 1),
      delayed_ (lookAheadFrames (rateHz), 0.0),
      gains_ (lookAheadFrames (rateHz), 0.0)
{}

void ListeningStage::setLevelDb (double levelDb) noexcept
{
    levelTarget_ = fromDecibels (levelDb);
}

/// The gain this sample may have as far as it is known without its followers.
double ListeningStage::gainFor (double sample) noexcept
{
    level_ = std::clamp (levelTarget_, level_ / rise_, level_ * rise_);
    const double loudness = loudness_.gainFor (sample * level_);

    const double peak = std::abs (sample) * level_ * loudness;
    const auto ceiling = static_cast<double> (ceiling_);
    const double share = peak > ceiling ? ceiling / peak : 1.0;
    limit_ = std::min (share, limit_ * release_);
    lowestShare_ = std::min (lowestShare_, limit_ * loudness);
    return level_ * loudness * limit_;
}

/// Mean of the last look-ahead of gains: no term of it is above what any sample within may have.
double ListeningStage::averaged (double gain) noexcept
{
    gainSum_ += gain - gains_[place_];
    gains_[place_] = gain;
    return gainSum_ / static_cast<double> (gains_.size());
}

void ListeningStage::process (std::span<const double> in, std::span<float> out) noexcept
{
    for (std::size_t frame = 0; frame < out.size(); ++frame)
    {
        const double sample = in[frame];
        if (! (std::abs (sample) <= largestSample)) // so that NaN is caught
            silence();
        if (isSilenced_)
        {
            out[frame] = 0.0F;
            continue;
        }

        const double allowed = minimum_.push (gainFor (sample));
        const double fadedIn = gain_ > 0.0 ? gain_ * rise_ : allowed * fadeFloor;
        gain_ = std::min (allowed, fadedIn);

        const double played = delayed_[place_] * averaged (gain_);
        delayed_[place_] = sample;
        place_ = place_ + 1 == gains_.size() ? 0 : place_ + 1;
        if (place_ == 0)
            gainSum_ = std::accumulate (gains_.begin(), gains_.end(), 0.0); // rounding must not pile up

        const auto bounded = std::clamp (static_cast<float> (played), -ceiling_, ceiling_);
        out[frame] = std::abs (bounded) < smallestSample ? 0.0F : bounded;
    }
}

void ListeningStage::clearMemory() noexcept
{
    std::fill (delayed_.begin(), delayed_.end(), 0.0);
    std::fill (gains_.begin(), gains_.end(), 0.0);
    gainSum_ = 0.0;
    gain_ = 0.0;
    limit_ = 1.0;
    minimum_.reset();
    loudness_.reset();
}

void ListeningStage::silence() noexcept
{
    if (isSilenced_)
        return;
    isSilenced_ = true;
    clearMemory();
}

void ListeningStage::resume() noexcept
{
    isSilenced_ = false;
}

double ListeningStage::takeReductionDb() noexcept
{
    const double reductionDb = -toDecibels (lowestShare_);
    lowestShare_ = 1.0;
    return reductionDb;
}

double ListeningStage::latencySeconds() const noexcept
{
    return static_cast<double> (delayed_.size()) / rateHz_;
}

void ListeningStage::reset() noexcept
{
    clearMemory();
    level_ = levelTarget_;
    lowestShare_ = 1.0;
    isSilenced_ = false;
}

} // namespace stopwright
