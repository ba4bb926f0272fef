// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/CirclingSource.h"

#include "Units/Engineering.h"
#include "Units/Error.h"

#include <algorithm>
#include <bit>
#include <cassert>
#include <cmath>
#include <numbers>
#include <utility>

namespace stopwright
{

namespace
{

constexpr double fullTurn = 2.0 * std::numbers::pi;
constexpr double highestPartOfSound = 0.5;

double framesAcross (const RotorSettings& rotor, double rateHz)
{
    return rotor.radiusMetres / CirclingSource::soundMetresPerSecond * rateHz;
}

void requirePlayable (const RotorSettings& rotor, const RotorPlace& place)
{
    if (! (rotor.radiusMetres >= 0.0 && rotor.radiusMetres < place.microphoneMetres))
        throw Error ("A rotor with a radius of " + formatForReading (rotor.radiusMetres, Quantity::number)
                     + " m cannot turn before a microphone at "
                     + formatForReading (place.microphoneMetres, Quantity::number) + " m; make it smaller.");
    const double fastest = std::max (std::abs (rotor.slowRpm), std::abs (rotor.fastRpm)) / 60.0;
    const double metresPerSecond = fullTurn * fastest * rotor.radiusMetres;
    if (! std::isfinite (rotor.slowRpm + rotor.fastRpm)
        || ! (metresPerSecond < highestPartOfSound * CirclingSource::soundMetresPerSecond))
        throw Error ("A rotor whose mouth moves at " + formatForReading (metresPerSecond, Quantity::number)
                     + " m/s is none; give it less than half the speed of sound, 343 m/s.");
}

} // namespace

CirclingSource::CirclingSource (const RotorSettings& rotor,
                                const RotorPlace& place,
                                bool isFast,
                                std::shared_ptr<const FractionalKernel> kernel,
                                int latencyFrames,
                                double rateHz)
    : rateHz_ (rateHz),
      radius_ (rotor.radiusMetres),
      place_ (place),
      turn_ (rotor, isFast, rateHz),
      kernel_ (std::move (kernel)),
      axisFrames_ (latencyFrames),
      axisSeconds_ (place.microphoneMetres / soundMetresPerSecond),
      seconds_ (axisSeconds_)
{
    requirePlayable (rotor, place);
    assert (latencyFrames >= leastLatencyFrames (rotor, *kernel_, rateHz));
    const double longest = latencyFrames + framesAcross (rotor, rateHz) + kernel_->reach() + 2;
    const auto size = std::bit_ceil (static_cast<std::size_t> (longest) + 1);
    mask_ = size - 1;
    ring_.assign (2 * size, 0.0);
    reset();
}

int CirclingSource::leastLatencyFrames (const RotorSettings& rotor, const FractionalKernel& kernel, double rateHz)
{
    return kernel.reach() + 1 + static_cast<int> (std::ceil (framesAcross (rotor, rateHz)));
}

/// tau = D (a - w tau) / c.
void CirclingSource::findDelay() noexcept
{
    const double radiansPerSecond = fullTurn * turn_.turnsPerSecond();
    const auto sight = RotorSight::at (fullTurn * turn_.turns() - radiansPerSecond * seconds_, radius_, place_);
    const double error = seconds_ - sight.metres / soundMetresPerSecond;
    seconds_ -= error / (1.0 + radiansPerSecond * sight.metresPerRadian / soundMetresPerSecond);
    gain_ = sight.gain;
}

void CirclingSource::process (std::span<double> samples) noexcept
{
    const auto reach = static_cast<std::size_t> (kernel_->reach());
    for (double& sample : samples)
    {
        newest_ = (newest_ + 1) & mask_;
        ring_[newest_] = sample;
        ring_[newest_ + mask_ + 1] = sample;

        turn_.advance();
        findDelay();
        const double delay = delayFrames();
        const auto whole = static_cast<std::size_t> (delay);
        const std::size_t window = (newest_ - whole - reach) & mask_;
        sample = gain_ * kernel_->read (ring_.data() + window, delay - static_cast<double> (whole));
    }
}

void CirclingSource::reset() noexcept
{
    std::fill (ring_.begin(), ring_.end(), 0.0);
    turn_.reset();
    seconds_ = axisSeconds_;
    for (int step = 0; step < 8; ++step)
        findDelay();
}

bool CirclingSource::isLike (const CirclingSource& other) const noexcept
{
    return other.rateHz_ == rateHz_ && other.ring_.size() == ring_.size() && other.axisFrames_ == axisFrames_
           && other.kernel_->reach() == kernel_->reach() && other.place_.microphoneMetres == place_.microphoneMetres;
}

void CirclingSource::copyStateFrom (const CirclingSource& other) noexcept
{
    assert (isLike (other));
    std::copy (other.ring_.begin(), other.ring_.end(), ring_.begin());
    turn_.copyStateFrom (other.turn_);
    seconds_ = other.seconds_;
    gain_ = other.gain_;
    newest_ = other.newest_;
}

} // namespace stopwright
