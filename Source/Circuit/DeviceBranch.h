// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/KnobRamp.h"
#include "Circuit/NonlinearCircuit.h"

#include <optional>
#include <span>
#include <vector>

namespace stopwright
{

/// A network with diodes, transistors or supplies that ends in a resistor on a bus it shares with others, one sample at
/// a time: what it sends into the bus depends on the bus's volts by a curve, of which it tells any point and its slope.
///
/// Behind the mixing resistor stands the network's output y (i) for a current i into it, and i = G (p - y) for a bus at p
/// volts: one equation, solved by Newton's method in at most mostSteps steps, each with the network's own answer.
/// Resting volts of the output go onto the bus as in the circuit, where no capacitor keeps them away.
/// Threading: construct and look up on [control]; the noexcept functions on [audio], no allocation, no lock.
class DeviceBranch
{
public:
    static constexpr int mostSteps = 6;

    /// Amps into the bus, and how they change with its volts (siemens, <= 0).
    struct Reading
    {
        double amps = 0.0;
        double slope = 0.0;
    };

    /// Units/range: ohms > 0. Fails: Error with a sentence when the network is not sound.
    DeviceBranch (const Netlist& netlist, double mixingOhms, double sampleRateHz);

    /// As BusBranch's.
    std::optional<int> findKnob (const PartKnob& knob) const { return circuit_.findKnob (knob); }

    int mixingKnob() const noexcept { return circuit_.knobCount(); }

    void setKnobTarget (int knobIndex, double value) noexcept;

    bool isMoving() const noexcept { return circuit_.isMoving() || mixing_.isMoving(); }

    double conductance() const noexcept { return 1.0 / mixing_.value(); }

    /// Into the bus in the last sample.
    double presentAmps() const noexcept { return -amps_; }

    /// Begins a sample with these volts at the network's sources.
    void openFrame (std::span<const double> sources) noexcept;

    /// Moves nothing; may be asked as often as wanted.
    Reading reading (double busVolts) noexcept;

    /// Ends the sample, with what the bus came to.
    void closeFrame (double busVolts) noexcept;

    /// At its operating point, knobs at their targets.
    void reset() noexcept;

    std::vector<int> adoptionMap (const DeviceBranch& other) const { return circuit_.adoptionMap (other.circuit_); }

    void adoptStates (const DeviceBranch& other, std::span<const int> map) noexcept;

private:
    double currentInto (double busVolts) noexcept;

    NonlinearCircuit circuit_;
    KnobRamp mixing_; ///< ohms, a step each sample
    int rampSamples_;
    double amps_ = 0.0; ///< into the network, where the last search ended
    double ohms_ = 0.0; ///< of the network there
    std::vector<double> output_;
};

} // namespace stopwright
