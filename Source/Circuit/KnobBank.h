// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/KnobRamp.h"
#include "Circuit/KnobTable.h"

#include <span>
#include <vector>

namespace stopwright
{

/// The knobs of a network while it runs: where each stands, and those on their way.
/// Threading: construct on [control], the rest on [audio] without allocation or lock.
class KnobBank
{
public:
    /// A knob reaches its target after stepCount calls of advance().
    KnobBank (const KnobTable& table, int stepCount);

    /// Another number of steps for one of them. Threading: [control].
    void setStepCount (int knob, int stepCount);

    std::span<const double> values() const noexcept { return values_; }

    bool isMoving() const noexcept { return movingCount_ > 0; }

    bool isMoving (int knob) const noexcept
    {
        return hasKnob (knob) && knobs_[static_cast<std::size_t> (knob)].ramp.isMoving();
    }

    /// Value clamped to the knob's range; non-finite is ignored, and so is a knob that is not there.
    void setTarget (int knob, double value) noexcept;

    /// The same at once. Returns false when it was ignored.
    bool setNow (int knob, double value) noexcept;

    /// One step for every knob that moves.
    void advance() noexcept;

    /// Every knob to its target.
    void finish() noexcept;

private:
    struct Knob
    {
        ValueRange range;
        bool isLinear = false;
        int stepCount = 1;
        KnobRamp ramp;
    };

    bool hasKnob (int knob) const noexcept { return knob >= 0 && static_cast<std::size_t> (knob) < knobs_.size(); }

    std::vector<Knob> knobs_;
    std::vector<double> values_;
    int movingCount_ = 0;
};

} // namespace stopwright
