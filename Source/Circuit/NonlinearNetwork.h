// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/JunctionSolver.h"
#include "Circuit/JunctionStep.h"
#include "Circuit/OperatingPoint.h"
#include "Circuit/StateSpaceBuilder.h"

#include <span>
#include <vector>

namespace stopwright
{

/// A network with diodes and transistors in motion: the linear rest as a state space with a port at every junction,
/// the junctions' laws solved against it in every sample. See NonlinearCircuit, which adds the knobs.
/// Threading: construct on [control], the rest on [audio] without allocation or lock.
class NonlinearNetwork
{
public:
    /// Steps of Newton's method in one sample at most.
    static constexpr int mostSteps = 12;

    /// Volts and amps that a network cannot have kept its laws with.
    static constexpr double runaway = 1e9;

    /// How the first output answers to a current into it: volts, and volts per further ampere.
    struct Answer
    {
        double volts = 0.0;
        double ohms = 0.0;
    };

    /// `builder` must be free of faults; `isInjected` tells whether its last port feeds the first output.
    NonlinearNetwork (StateSpaceBuilder builder,
                      const Netlist& netlist,
                      OperatingPoint point,
                      bool isInjected,
                      double sampleRateHz);

    const StateSpaceBuilder& builder() const noexcept { return builder_; }

    const JunctionBank& junctions() const noexcept { return solver_.bank(); }

    const OperatingPoint& restingPoint() const noexcept { return point_; }

    int tapCount() const noexcept { return tapCount_; }

    int outputCount() const noexcept { return outputCount_; }

    bool isInjected() const noexcept { return isInjected_; }

    /// New values, same states: the junctions' currents are solved afresh for the states as they are. Returns false and
    /// keeps the old matrices when the new ones give no finite step.
    bool build (std::span<const double> knobValues) noexcept;

    /// The next frame is taken so that stiff modes do not ring (JunctionStep::predictHalf).
    void dampNextFrame() noexcept { isDamped_ = true; }

    /// Begins a frame: the present volts of every tap.
    void open (const double* tapVolts) noexcept;

    /// Solves the open frame for a current into the first output, without moving the states.
    Answer answer (double injectedAmps) noexcept;

    /// Ends the frame with this current: moves the states on and writes the output nodes' volts.
    void close (double injectedAmps, double* outputs) noexcept;

    /// Everything where the network rests.
    void rest() noexcept;

    long fallbackCount() const noexcept { return fallbackCount_; }

    std::span<double> states() noexcept { return states_; }

    /// Volts of the taps and supplies and amps of the ports in the last frame.
    std::span<double> lastSources() noexcept { return lastSources_; }

    std::span<const double> lastSources() const noexcept { return lastSources_; }

    std::span<double> junctionVolts() noexcept { return junctionVolts_; }

    std::span<const double> junctionVolts() const noexcept { return junctionVolts_; }

    /// Volts or amps of builder().quantities()[index].
    double quantity (std::size_t index) const noexcept;

    /// Solves the junctions' currents afresh for the states as they are.
    void solveInstant() noexcept;

private:
    bool solveFrame (double injectedAmps) noexcept;
    void openHalf() noexcept;
    double entry (int index, double injectedAmps) const noexcept;

    StateSpaceBuilder builder_;
    StateSpace network_;
    OperatingPoint point_;
    JunctionSolver solver_;
    int tapCount_, outputCount_, firstPort_;
    bool isInjected_;
    JunctionStep step_;
    JunctionPorts ports_, instantPorts_; ///< over a step of time, and without one
    std::vector<double> states_, restStates_, lastSources_, present_, middle_, junctionVolts_;
    AlignedNumbers frame_;
    std::vector<double> openVolts_, answerOpen_, answerAmps_;
    double solvedAmps_ = 0.0;
    bool isSolved_ = false; ///< the open frame, for solvedAmps_
    bool isSound_ = true;   ///< and its laws hold
    bool isDamped_ = false;
    long fallbackCount_ = 0;
};

} // namespace stopwright
