// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Outlet.h"
#include "Sound/CirclingSource.h"
#include "Sound/Crossover.h"

#include <span>

namespace stopwright
{

/// A loudspeaker with a turning horn for what lies above its crossover and a turning drum for what lies below, heard in
/// mono by one microphone a metre from the axis in the plane of both.
///
/// Both begin with their mouths towards the microphone. Cabinet and room are left out: their reflections would need
/// numbers that nobody here has measured.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class RotarySpeaker
{
public:
    static constexpr RotorPlace hornPlace = rotaryHornPlace;
    static constexpr RotorPlace drumPlace = rotaryDrumPlace;

    /// Fails: Error with a sentence when a rotor cannot turn so (CirclingSource) or the crossover lies too high.
    RotarySpeaker (const RotarySettings& settings, bool isFast, double deviceRateHz);

    /// Both rotors to their fast or slow speed, in their own times.
    void setFast (bool isFast) noexcept;

    /// In place, any length.
    void process (std::span<double> samples) noexcept;

    /// How late a sound from the axis comes, in device frames. The crossover's all-pass is not counted, nor the way from
    /// axis to microphone, which is left out.
    int latencyFrames() const noexcept { return latencyFrames_; }

    void reset() noexcept;

    /// Whether copyStateFrom may be called with it.
    bool isLike (const RotarySpeaker& other) const noexcept;

    void copyStateFrom (const RotarySpeaker& other) noexcept;

private:
    RotarySpeaker (const RotarySettings& settings,
                   bool isFast,
                   double deviceRateHz,
                   const std::shared_ptr<const FractionalKernel>& kernel);

    int latencyFrames_;
    Crossover crossover_;
    CirclingSource horn_;
    CirclingSource drum_;
};

} // namespace stopwright
