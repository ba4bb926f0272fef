// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/BusBranch.h"
#include "Circuit/DeviceBranch.h"
#include "Organ/Card.h"
#include "Organ/StopTablet.h"
#include "Sound/BusNode.h"
#include "Sound/DrawRamp.h"
#include "Sound/KeyedTone.h"
#include "Sound/LinearRamp.h"

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// One stop of the rail: its card's network from the tones it taps to its mixing resistor, and how far it is drawn.
///
/// While a tablet moves, the stop stands behind an ideal transformer of ratio w = 0 .. 1 on the bus: the bus sees the
/// conductance w^2 / R and w times the stop's volts, the stop sees w times the bus. That is passive at any w, leaves no
/// click, and is the circuit as drawn at w = 1. A stop that is grounded when it is not drawn leaves (1 - w^2) / R to
/// common, so that the bus's load stays the same; one that is open leaves nothing. Fully out, a stop costs nothing.
/// Threading: construct and look up on [control]; noexcept functions on [audio], no allocation, no lock.
class RailStop
{
public:
    static constexpr int length = BusBranch::length;
    static constexpr double drawSeconds = 0.03;

    /// tones[i] is what tap i draws on. Fails: Error with a sentence when the card's network is not sound.
    RailStop (const StopTablet& tablet,
              const Card& card,
              const std::vector<const KeyedTone*>& tones,
              double sampleRateHz);

    /// Numbers for setKnobTarget: first a level for each tap, then the network's parts, last the mixing resistor.
    std::optional<int> findKnob (const PartKnob& knob) const;
    std::optional<int> findTapLevelKnob (const std::string& tapName) const;

    int mixingKnob() const noexcept;

    int knobCount() const noexcept { return mixingKnob() + 1; }

    void setKnobTarget (int knobIndex, double value) noexcept;
    bool knobsMove() const noexcept;

    void setDrawn (bool drawn) noexcept { draw_.setDrawn (drawn); }

    bool isDrawn() const noexcept { return draw_.isDrawn(); }

    /// Before each block: knobs and tablet move on. Returns whether the bus has to settle.
    bool move() noexcept;

    /// With diodes, transistors or supplies in its network, a stop is asked sample by sample (see BusNode::solveBeside).
    bool hasDevices() const noexcept { return devices_ != nullptr; }

    /// Not even partly drawn: only addRetiredTo is to be called.
    bool isOut() const noexcept { return draw_.isOut(); }

    void addTo (BusNode::Instant& instant) const noexcept;

    /// What the stop does to the bus as long as move says that nothing changes: kernel and conductance.
    void addSteadyTo (BusNode::Stops& stops) const noexcept;

    void setBusVolts (double volts) noexcept;

    /// A block, from `frame` of the tones on, in this order.
    void begin (int frame) noexcept;
    void addTo (BusNode::Samples& amps) const noexcept;
    void finish (const BusNode::Samples& busVolts) noexcept;

    /// The same of a stop with devices, between begin and the next block: every sample in this order.
    void openSample (std::size_t sample) noexcept;
    DeviceBranch::Reading reading (double busVolts) noexcept;
    void closeSample (double busVolts) noexcept;

    /// What a stop leaves on the bus besides, siemens.
    double retiredSiemens() const noexcept;

    /// Between a stop with devices and one without, nothing is taken over: the map is empty.
    std::vector<int> adoptionMap (const RailStop& other) const;

    void adopt (const RailStop& other, std::span<const int> map) noexcept;

private:
    struct TapFeed
    {
        std::string name;
        double polarity;
        const KeyedTone* tone;
        LinearRamp level;
    };

    int tapCount() const noexcept { return static_cast<int> (taps_.size()); }

    double conductance() const noexcept { return linear_ ? linear_->conductance() : devices_->conductance(); }

    bool networkMoves() const noexcept { return linear_ ? linear_->isMoving() : devices_->isMoving(); }

    void resetNetwork() noexcept;
    std::span<double, length> samplesOf (std::size_t tap) noexcept;

    std::unique_ptr<BusBranch> linear_;
    std::unique_ptr<DeviceBranch> devices_; ///< one of the two
    std::vector<TapFeed> taps_;
    std::vector<BusBranch::Samples> deviceSamples_; ///< the taps' volts, for devices_
    std::vector<double> present_;                   ///< those of one sample
    DrawRamp draw_;
    bool isGroundedWhenOut_;
    double weight_;
};

} // namespace stopwright
