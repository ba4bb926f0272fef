// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Outlet.h"
#include "Sound/FractionalKernel.h"
#include "Sound/RotorTurn.h"
#include "Study/RotorSight.h"

#include <cstddef>
#include <memory>
#include <span>
#include <vector>

namespace stopwright
{

/// A source on a circle, heard by a microphone at rest: Doppler, distance and directivity, all from where it was when
/// the sound left it.
///
/// Way D (a) and amplitude at an angle are RotorSight's. What arrives at t left at t - tau, tau = D (a (t - tau)) / c:
/// solved by one Newton step from the tau of the sample before, taking the speed as steady on the way. So a source coming
/// on at v sounds f / (1 - v / c), and not f (1 + v / c). c = 343 m/s.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
/// Source: Pierce, Acoustics (1981), moving sources; Smith, Serafin, Abel & Berners, DAFx-02 (2002), rotating horns
/// (both from memory)
class CirclingSource
{
public:
    static constexpr double soundMetresPerSecond = RotorSight::soundMetresPerSecond;

    /// `latencyFrames` is how late a sound from the axis would come, at least leastLatencyFrames.
    /// Fails: Error when the circle reaches the microphone, or the source moves at half the speed of sound or more.
    CirclingSource (const RotorSettings& rotor,
                    const RotorPlace& place,
                    bool isFast,
                    std::shared_ptr<const FractionalKernel> kernel,
                    int latencyFrames,
                    double rateHz);

    /// Of the kernel, and of the radius by which the source may be nearer than its axis.
    static int leastLatencyFrames (const RotorSettings& rotor, const FractionalKernel& kernel, double rateHz);

    void setFast (bool isFast) noexcept { turn_.setFast (isFast); }

    /// In place, any length.
    void process (std::span<double> samples) noexcept;

    /// How long ago, in frames, the sound of the last frame went in.
    double delayFrames() const noexcept { return axisFrames_ + (seconds_ - axisSeconds_) * rateHz_; }

    /// Nothing under way, angle 0, at the speed asked for.
    void reset() noexcept;

    /// Whether copyStateFrom may be called with it.
    bool isLike (const CirclingSource& other) const noexcept;

    /// Goes on from where another stands, with what is under way.
    void copyStateFrom (const CirclingSource& other) noexcept;

private:
    void findDelay() noexcept;

    double rateHz_;
    double radius_;
    RotorPlace place_;
    RotorTurn turn_;
    std::shared_ptr<const FractionalKernel> kernel_;
    double axisFrames_;  ///< delay of a sound from the axis
    double axisSeconds_; ///< way of a sound from the axis
    double seconds_;     ///< way of the last sample: tau
    double gain_ = 1.0;
    std::size_t mask_ = 0;
    std::size_t newest_ = 0;
    std::vector<double> ring_; ///< twice over, so that a window never wraps
};

} // namespace stopwright
