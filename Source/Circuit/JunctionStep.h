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
    JunctionStep (const StateSpace& sizes, int ports, double sampleRateHz);

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

    /// The first ports' part of it, as many as the square matrix has rows: volts of each from the amps of each.
    void writeImpedance (StateSpace::Matrix& impedance) const noexcept;

    /// Outputs and port volts at this very instant, and the same part without any step of time.
    void instant (const double* states, const double* sources, double* outputs) const noexcept;

    void writeInstantImpedance (StateSpace::Matrix& impedance) const noexcept;

private:
    void packOutput (int output) noexcept;
    void packState (int state) noexcept;

    int stateCount_, sourceCount_, outputCount_, portCount_;
    CayleyStep cayley_;
    PackedProduct product_;
    std::vector<double> drive_; ///< all sources of the last sample, then those of the present one without the ports
    StateSpace::Matrix response_;
};

} // namespace stopwright
