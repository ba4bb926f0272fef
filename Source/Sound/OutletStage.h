// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Outlet.h"
#include "Sound/RotarySpeaker.h"
#include "Sound/SwellShoe.h"
#include "Sound/Tremulant.h"

#include <optional>
#include <span>

namespace stopwright
{

/// One outlet in sound, at the device's rate: the swell shoe where the outlet follows it, then the tremulant or the
/// rotary speaker where it is one.
///
/// The output does not depend on how the stream is cut into blocks, to the last bit.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class OutletStage
{
public:
    /// Shoe open, tremulant or fast speed as outlet.isOn says.
    /// Units/range: deviceRateHz 8000 .. 192000 and beyond, samples per second.
    /// Fails: Error with a sentence that names the outlet.
    OutletStage (const Outlet& outlet, double deviceRateHz);

    /// Shoe from 0 closed to 1 open; nothing happens at an outlet that does not follow it.
    void setSwell (double position) noexcept;

    /// Tremulant: swings; rotary: at its fast speed; main: nothing happens.
    void setOn (bool isOn) noexcept;

    /// Rate and depth to run to; nothing happens at an outlet without tremulant.
    void setTremulant (const TremulantSettings& settings) noexcept;

    /// In place, any length. A sample that is not finite may stay until reset.
    void process (std::span<double> samples) noexcept;

    /// How late the output is, in device frames: of a rotary speaker only.
    int latencyFrames() const noexcept { return rotary_ ? rotary_->latencyFrames() : 0; }

    /// Nothing under way; shoe and switch stay where they are, all ramps at their ends.
    void reset() noexcept;

    /// Whether copyStateFrom may be called with it: the same kind at the same rate.
    bool isLike (const OutletStage& other) const noexcept;

    /// Goes on where an outlet of the same make stands: shoe, switch, phase and angle, and what is under way.
    void copyStateFrom (const OutletStage& other) noexcept;

private:
    double deviceRateHz_;
    std::optional<SwellShoe> swell_;
    std::optional<Tremulant> tremulant_;
    std::optional<RotarySpeaker> rotary_;
};

} // namespace stopwright
