// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/AlignedNumbers.h"
#include "Circuit/CayleyStep.h"
#include "Circuit/PackedProduct.h"

#include <vector>

namespace stopwright
{

/// The Cayley step of a network with ports, in two parts: what the next sample would be if the ports carried nothing
/// then, and what each port's current adds to it. Source: as CayleyStep.
///
/// The last `ports` sources of the state space are the ports' amps and its last `ports` outputs the volts across them.
/// A frame is [outputs and port volts; states]. Threading: construct on [control], the rest on [audio] without
/// allocation or lock.
class JunctionStep
{
public:
    /// The first `junctions` of the ports are junctions; the impedances below are theirs.
    JunctionStep (const StateSpace& sizes, int ports, int junctions, double sampleRateHz);

    /// Takes new matrices. Returns false, and keeps the old ones, when they give no finite step.
    bool build (const StateSpace& network) noexcept;

    int frameSize() const noexcept { return outputCount_ + stateCount_; }

    /// Length of an array a frame is written to.
    int frameStorage() const noexcept { return product_.outputSize(); }

    /// The frame after `states` and `lastSources`, with the present sources but nothing from the ports.
    void predict (const double* states, const double* lastSources, const double* present, double* frame) noexcept;

    /// The same for a backward Euler step of half a sample from the sources `from` to the sources `to`, whose ports must
    /// be zero: two of them forget what a jump puts into stiff modes, see CayleyStep::runDamped. The same response holds.
    void predictHalf (const double* states, const double* from, const double* to, double* frame) const noexcept;

    /// What one ampere of port `port` adds to entry `entry` of a frame.
    double response (int entry, int port) const noexcept { return response_ (entry, port); }

    /// The junctions' part of it: volts of each from the amps of each.
    const StateSpace::Matrix& impedance() const noexcept { return impedance_; }

    /// Outputs and port volts at this very instant, and the junctions' part without any step of time.
    void instant (const double* states, const double* sources, double* outputs) const noexcept;

    const StateSpace::Matrix& instantImpedance() const noexcept { return instantImpedance_; }

private:
    void packOutput (int output) noexcept;
    void packState (int state) noexcept;

    int stateCount_, sourceCount_, outputCount_, portCount_;
    CayleyStep cayley_;
    PackedProduct product_;
    std::vector<double> drive_; ///< all sources of the last sample, then those of the present one without the ports
    StateSpace::Matrix response_, impedance_, instantImpedance_;
};

} // namespace stopwright
