// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/KnobBank.h"
#include "Circuit/Netlist.h"
#include "Circuit/PortBlock.h"
#include "Circuit/SteppedNetwork.h"

#include <optional>
#include <span>
#include <vector>

namespace stopwright
{

/// A linear network that ends in a resistor on a bus it shares with others, run eight samples at a time in two halves:
/// what it would put out if the bus stood at zero, then, when the bus is solved, the rest.
///
/// The bus's volts are one more source of the network, behind the mixing resistor at the output node. With p the bus's
/// volts and y the output's, y[n] = free()[n] + sum over j <= n of kernel()[n-j] p[j], and the network sends
/// conductance() (y - p) into the bus: all a bus needs to know, and exact. Knobs ramp as in LinearCircuit, the mixing
/// resistor in finer steps over mixingRampSeconds: it is the level itself, and nothing behind it smooths a step.
/// Threading: construct and look up on [control]; the noexcept functions on [audio], no allocation, no lock.
class BusBranch
{
public:
    static constexpr int length = PortBlock::length;
    static constexpr double mixingRampSeconds = 0.03;
    using Samples = PortBlock::Samples;

    /// Units/range: ohms > 0. Fails: Error with a sentence when the network is not sound or too large.
    BusBranch (const Netlist& netlist, double mixingOhms, double sampleRateHz);

    /// Of the network's own sources, without the bus.
    int sourceCount() const noexcept { return static_cast<int> (sources_.size()) - 1; }

    /// As LinearCircuit's. Threading: [control].
    std::optional<int> findKnob (const PartKnob& knob) const;

    /// The mixing resistor's.
    int mixingKnob() const noexcept { return mixingKnob_; }

    void setKnobTarget (int knobIndex, double value) noexcept { knobs_.setTarget (knobIndex, value); }

    bool isMoving() const noexcept { return knobs_.isMoving(); }

    /// Of the mixing resistor, siemens, in the block that was begun.
    double conductance() const noexcept { return conductance_; }

    /// Before each block: lets knobs move on. Returns whether the matrices are new. Then the bus stands elsewhere for the
    /// same charges, and a step with both sides on the same matrices needs to know where: find it from presentFree and
    /// presentKernel (y = presentFree() + presentKernel() p, now), and set it.
    bool moveKnobs() noexcept;

    double presentFree() const noexcept;
    double presentKernel() const noexcept;

    void setBusVolts (double volts) noexcept { network_.lastSources().back() = volts; }

    /// Where the volts of one of the network's own sources go, before each begin.
    std::span<double, length> samplesOf (int source) noexcept { return block_.samplesOf (source); }

    /// Begins a block.
    void begin() noexcept;

    const Samples& free() const noexcept { return free_; }

    const Samples& kernel() const noexcept { return block_.kernel(); }

    /// Ends it, with what the bus came to.
    void finish (const Samples& busVolts) noexcept;

    /// At rest, knobs at their targets.
    void reset() noexcept;

    /// As LinearCircuit's. adoptionMap on [control].
    std::vector<int> adoptionMap (const BusBranch& other) const;
    void adoptStates (const BusBranch& other, std::span<const int> adoptionMap) noexcept;

private:
    void rebuild() noexcept;

    std::vector<SourcePort> sources_; ///< the bus last
    SteppedNetwork network_;
    KnobBank knobs_;
    int mixingKnob_;
    PortBlock block_;
    int holdBlocks_;     ///< for so many blocks matrices stand still while knobs other than the mixing resistor move
    int heldBlocks_ = 0; ///< of them still to go
    double conductance_ = 0.0;
    Samples free_ {};
};

} // namespace stopwright
