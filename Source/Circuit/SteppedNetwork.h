// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/BlockStep.h"
#include "Circuit/CayleyStep.h"
#include "Circuit/StateSpaceBuilder.h"

#include <span>
#include <vector>

namespace stopwright
{

/// A state space in motion: its matrices for the values in force, its states, and the step or block that moves them.
/// Threading: construct on [control], the rest on [audio] without allocation or lock.
class SteppedNetwork
{
public:
    /// `builder` must be free of faults.
    SteppedNetwork (StateSpaceBuilder builder, double sampleRateHz);

    const StateSpaceBuilder& builder() const noexcept { return builder_; }

    /// New values, same states. Returns false and keeps the old matrices when the new ones give no finite step:
    /// a wrong tone, never a NaN.
    bool build (std::span<const double> knobValues) noexcept;

    /// The next sample is taken so that stiff modes do not ring (CayleyStep::runDamped).
    void dampNextSample() noexcept { isDamped_ = true; }

    /// Runs frames offset .. offset + frameCount - 1; in blocks where possible if `inBlocks`, which pays when the
    /// values stay as they are.
    void run (const double* const* sources, double* const* outputs, int offset, int frameCount, bool inBlocks) noexcept;

    /// The step in force, for those who run it in another way than run does and keep states() and lastSources() true.
    const CayleyStep& step() const noexcept { return step_; }

    void reset() noexcept;

    /// Volts or amps of builder().quantities()[index].
    double quantity (std::size_t index) const noexcept;

    /// 1/2 sum C v^2 + 1/2 sum L i^2 with these knob values.
    double storedEnergy (std::span<const double> knobValues) const noexcept;

    std::span<double> states() noexcept { return states_; }

    std::span<const double> states() const noexcept { return states_; }

    std::span<double> lastSources() noexcept { return lastSources_; }

    std::span<const double> lastSources() const noexcept { return lastSources_; }

private:
    StateSpaceBuilder builder_;
    StateSpace network_;
    CayleyStep step_;
    BlockStep blocks_;
    bool hasBlocks_ = false; ///< blocks_ has the numbers of step_
    bool isDamped_ = false;
    std::vector<double> states_, lastSources_;
};

} // namespace stopwright
