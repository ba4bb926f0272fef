// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/LinearCircuit.h"
#include "Circuit/NonlinearCircuit.h"

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// The network of one card in time with one output, whichever way it has to be run: NonlinearCircuit when it has diodes,
/// transistors or supplies, else LinearCircuit.
///
/// Of a nonlinear network the output's resting volts, as it was built, are taken off; a card normally ends in a coupling
/// capacitor, and then they are zero anyway. What turned knobs, or a signal that is rectified, make of the resting volts
/// is not taken off.
/// Threading: construct, destroy and look up on [control]; the noexcept functions on [audio], no allocation, no lock.
class CardNetwork
{
public:
    /// Fails: Error with a sentence when the netlist is not sound.
    CardNetwork (const Netlist& netlist, const std::string& outputNode, double sampleRateHz);

    /// As in LinearCircuit.
    int knobCount() const noexcept;
    std::optional<int> findKnob (const PartKnob& knob) const;
    void setKnobTarget (int knobIndex, double value) noexcept;
    bool isMoving() const noexcept;

    /// sources[i] hold as many samples as `output`, in volts.
    void process (std::span<const double* const> sources, std::span<double> output) noexcept;
    void reset() noexcept;

    bool hasDevices() const noexcept { return nonlinear_ != nullptr; }

    std::vector<std::string> stateNames() const;

    /// As in LinearCircuit. Between a linear and a nonlinear network nothing is taken over: the map is empty.
    std::vector<int> adoptionMap (const CardNetwork& other) const;
    void adoptStates (const CardNetwork& other, std::span<const int> adoptionMap) noexcept;

private:
    std::unique_ptr<LinearCircuit> linear_;
    std::unique_ptr<NonlinearCircuit> nonlinear_; ///< one of the two
};

} // namespace stopwright
