// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// One knob on its way to where it was turned, in equal steps: of its logarithm, or of itself where it is a position
/// or starts or ends at zero. Threading: [audio] no allocation, no lock.
class KnobRamp
{
public:
    KnobRamp() = default;

    explicit KnobRamp (double value) noexcept : value_ (value), target_ (value) {}

    double value() const noexcept { return value_; }

    double target() const noexcept { return target_; }

    bool isMoving() const noexcept { return stepsLeft_ > 0; }

    /// Stands at `value` at once.
    void jumpTo (double value) noexcept;

    /// Starts for `target` from where it stands, to arrive after stepCount >= 1 steps.
    void moveTo (double target, int stepCount, bool isLinear) noexcept;

    /// Takes the next step; the last one arrives exactly.
    void advance() noexcept;

private:
    double value_ = 0.0;
    double target_ = 0.0;
    double factor_ = 1.0;
    double increment_ = 0.0;
    int stepsLeft_ = 0;
};

} // namespace stopwright
