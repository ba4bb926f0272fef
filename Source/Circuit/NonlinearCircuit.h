// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/NonlinearNetwork.h"
#include "Circuit/PartKnob.h"

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// A network with diodes, transistors and supplies running in time: every tap's voltage in, the volts at chosen nodes out.
///
/// The linear rest is the same state space and Cayley step as LinearCircuit's (physical states, knobs that ramp over
/// LinearCircuit::rampSeconds); the junctions' currents are further sources of it, taken by the trapezoidal rule, and in
/// every sample Newton's method finds the volts at which laws and network agree (JunctionSolver), in at most
/// NonlinearNetwork::mostSteps steps from where the last sample was. Where that does not do, the sample is taken with
/// every junction as the straight line it was in the last sample that was solved, the search goes on in the next one, and fallbackCount() goes up; should a sample not be
/// finite or beyond NonlinearNetwork::runaway (a tap was), the network starts over from its resting point. No output is ever not finite.
/// It begins at its operating point, and its outputs are whole voltages, resting volts included: restingVolts() is what
/// to subtract where no capacitor keeps them away. They are those of the values it was built with; turning a knob may
/// move the true ones.
/// A network without devices runs as in LinearCircuit, sample by sample.
/// Threading: construct, destroy and look up on [control]; the noexcept functions on [audio], no allocation, no lock.
/// Source: Yeh, Abel, Smith, "Automated physical modeling of nonlinear audio circuits", IEEE TASLP 18, 2010 (K-method).
class NonlinearCircuit
{
public:
    /// `outputNodes` as for LinearCircuit. Fails: Error with a sentence when the netlist is not sound, too large, has no
    /// operating point, or a node does not exist.
    NonlinearCircuit (const Netlist& netlist, const std::vector<std::string>& outputNodes, double sampleRateHz);
    ~NonlinearCircuit();
    NonlinearCircuit (const NonlinearCircuit&) = delete;
    NonlinearCircuit& operator= (const NonlinearCircuit&) = delete;
    NonlinearCircuit (NonlinearCircuit&&) = delete;
    NonlinearCircuit& operator= (NonlinearCircuit&&) = delete;

    int sourceCount() const noexcept; ///< taps
    int outputCount() const noexcept;
    int stateCount() const noexcept;

    const OperatingPoint& operatingPoint() const noexcept;

    /// Volts of output `output` at the operating point.
    double restingVolts (int output) const noexcept;

    /// Knobs as in LinearCircuit; the series resistances of diodes and supplies are among them.
    int knobCount() const noexcept;
    std::optional<int> findKnob (const PartKnob& knob) const;
    void setKnobTarget (int knobIndex, double value) noexcept;
    void setKnobNow (int knobIndex, double value) noexcept;
    double knobValue (int knobIndex) const noexcept;
    bool isMoving() const noexcept;

    /// Runs `frameCount` samples. sources[i] and outputs[j] each hold frameCount samples, in volts; in place is not
    /// allowed. Any frameCount >= 0. Threading: [audio].
    void process (std::span<const double* const> sources, std::span<double* const> outputs, int frameCount) noexcept;

    /// One sample at a time, for a network whose first output node takes part in another one (a bus): openFrame with the
    /// present volts of every tap; then tryFrame as often as wanted, with a current in amps that flows INTO the first
    /// output node from outside, gives its volts and their slope dv/di, and moves nothing; then closeFrame with the
    /// current that was agreed on moves the network on by one sample and writes all outputs' volts.
    /// Each must be called in this order; process() is openFrame and closeFrame (0, ...). A repeated current costs
    /// nothing. Threading: [audio].
    using Answer = NonlinearNetwork::Answer;
    void openFrame (std::span<const double> tapVolts) noexcept;
    Answer tryFrame (double injectedAmps) noexcept;
    void closeFrame (double injectedAmps, std::span<double> outputs) noexcept;

    /// Whether a current can be injected: not into a node that only coils reach, nor into common. Without it the amps
    /// are taken for zero and the slope is zero. Threading: [any].
    bool takesCurrent() const noexcept;

    /// Back to the operating point it was built at, ramps finished. Threading: [audio].
    void reset() noexcept;

    /// As in LinearCircuit: states by name, and taking over those (and the taps' last volts, and the junctions' volts as
    /// "D1", "Q1.be", "Q1.bc") that another circuit has under the same names.
    std::vector<std::string> stateNames() const;
    std::vector<int> adoptionMap (const NonlinearCircuit& other) const;
    void adoptStates (const NonlinearCircuit& other, std::span<const int> adoptionMap) noexcept;

    /// Samples since construction in which the laws were not met. Threading: [audio].
    long fallbackCount() const noexcept;

private:
    void beginFrame() noexcept;

    struct Implementation;
    std::unique_ptr<Implementation> implementation_;
};

} // namespace stopwright
