// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/KnobBank.h"

#include <cmath>

namespace stopwright
{

KnobBank::KnobBank (const KnobTable& table, int stepCount) : values_ (table.values())
{
    for (int index = 0; index < table.size(); ++index)
    {
        const auto& entry = table.at (index);
        knobs_.push_back ({ entry.range, entry.knob.kind == KnobKind::position, stepCount, KnobRamp (entry.value) });
    }
}

void KnobBank::setStepCount (int knob, int stepCount)
{
    knobs_.at (static_cast<std::size_t> (knob)).stepCount = stepCount;
}

void KnobBank::setTarget (int knob, double value) noexcept
{
    if (! hasKnob (knob) || ! std::isfinite (value))
        return;
    auto& [range, isLinear, stepCount, ramp] = knobs_[static_cast<std::size_t> (knob)];
    const double target = range.clamp (value);
    if (target == ramp.target())
        return;
    movingCount_ -= ramp.isMoving() ? 1 : 0;
    ramp.moveTo (target, stepCount, isLinear);
    movingCount_ += ramp.isMoving() ? 1 : 0;
}

bool KnobBank::setNow (int knob, double value) noexcept
{
    if (! hasKnob (knob) || ! std::isfinite (value))
        return false;
    Knob& set = knobs_[static_cast<std::size_t> (knob)];
    movingCount_ -= set.ramp.isMoving() ? 1 : 0;
    set.ramp.jumpTo (set.range.clamp (value));
    values_[static_cast<std::size_t> (knob)] = set.ramp.value();
    return true;
}

void KnobBank::advance() noexcept
{
    movingCount_ = 0;
    for (std::size_t index = 0; index < knobs_.size(); ++index)
    {
        auto& ramp = knobs_[index].ramp;
        ramp.advance();
        values_[index] = ramp.value();
        movingCount_ += ramp.isMoving() ? 1 : 0;
    }
}

void KnobBank::finish() noexcept
{
    movingCount_ = 0;
    for (std::size_t index = 0; index < knobs_.size(); ++index)
    {
        knobs_[index].ramp.jumpTo (knobs_[index].ramp.target());
        values_[index] = knobs_[index].ramp.value();
    }
}

} // namespace stopwright
