// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Netlist.h"
#include "Circuit/PartKnob.h"

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// A linear network running in time: every source's voltage in, the volts at chosen nodes out.
///
/// The circuit is a state space in physical states (capacitor volts, inductor amps, op-amp output volts), stepped with
/// the Cayley form x[n+1] = (I - hA/2)^-1 ((I + hA/2) x[n] + hB/2 (u[n] + u[n+1])), run in blocks. A knob ramps in its log
/// domain over rampSeconds and the matrices are solved again every few samples while it moves; both sides of the step
/// use the same matrices, so a passive network gains no energy whatever the knobs do.
/// Threading: construct, destroy and look up on [control]; the noexcept functions on [audio], no allocation, no lock.
class LinearCircuit
{
public:
    static constexpr double rampSeconds = 0.02;

    /// `outputNodes` are the nodes to hear or look at (at most CircuitLimits::outputs; common is allowed and reads 0).
    /// Fails: Error with a sentence when the netlist is not sound, too large or has devices (see hasDevices), or a node does not exist.
    LinearCircuit (const Netlist& netlist, const std::vector<std::string>& outputNodes, double sampleRateHz);
    ~LinearCircuit();
    LinearCircuit (const LinearCircuit&) = delete;
    LinearCircuit& operator= (const LinearCircuit&) = delete;
    LinearCircuit (LinearCircuit&&) = delete;
    LinearCircuit& operator= (LinearCircuit&&) = delete;

    int sourceCount() const noexcept;
    int outputCount() const noexcept;
    int stateCount() const noexcept;

    int knobCount() const noexcept;

    /// Index of a knob for setKnobTarget, or nothing when the part has no such number (or it is absent: no leak, no
    /// self-capacitance, ideal op-amp). Threading: [control].
    std::optional<int> findKnob (const PartKnob& knob) const;

    /// Lets a knob run to `value` (SI; clamped to the part's legal range; non-finite is ignored) in a ramp of
    /// rampSeconds from where it stands. Threading: [audio].
    void setKnobTarget (int knobIndex, double value) noexcept;

    /// Sets a knob at once, without a ramp (states are kept). Threading: [audio].
    void setKnobNow (int knobIndex, double value) noexcept;

    double knobValue (int knobIndex) const noexcept;
    bool isMoving() const noexcept;

    /// Runs `frameCount` samples. sources[i] and outputs[j] each hold frameCount samples, in volts; in place is not
    /// allowed. Any frameCount >= 0. Threading: [audio].
    void process (std::span<const double* const> sources, std::span<double* const> outputs, int frameCount) noexcept;

    /// Puts the network at rest: all states zero, sources remembered as zero, ramps finished. Threading: [audio].
    void reset() noexcept;

    /// States by name ("C1", "L1", "L1.self", "U1") in volts or amps, and taking over those another circuit has under
    /// the same names, so that a changed network starts from the charge the old one held.
    /// Threading: statesOf/prepareAdoption on [control], adoptStates on [audio].
    std::vector<std::string> stateNames() const;
    std::vector<int> adoptionMap (const LinearCircuit& other) const;
    void adoptStates (const LinearCircuit& other, std::span<const int> adoptionMap) noexcept;

    /// Stored energy 1/2 sum C v^2 + 1/2 sum L i^2 in joules (op-amp states excluded). Threading: [audio].
    double storedEnergy() const noexcept;

private:
    struct Implementation;
    std::unique_ptr<Implementation> implementation_;
};

} // namespace stopwright
