// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/RailStop.h"

#include "Circuit/Junction.h"
#include "Circuit/LinearCircuit.h"
#include "Sound/TapBus.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

RailStop::RailStop (const StopTablet& tablet,
                    const Card& card,
                    const std::vector<const KeyedTone*>& tones,
                    double sampleRateHz)
    : draw_ (tablet.drawn, static_cast<int> (drawSeconds * sampleRateHz / length)),
      isGroundedWhenOut_ (tablet.whenRetired == WhenRetired::grounded),
      weight_ (draw_.value())
{
    const auto netlist = netlistOf (card);
    if (stopwright::hasDevices (netlist))
        devices_ = std::make_unique<DeviceBranch> (netlist, tablet.mixingOhms, sampleRateHz);
    else
        linear_ = std::make_unique<BusBranch> (netlist, tablet.mixingOhms, sampleRateHz);
    for (std::size_t tap = 0; tap < card.taps.size(); ++tap)
    {
        const Tap& from = card.taps[tap];
        const double polarity = from.polarity * tablet.polarity;
        taps_.push_back ({ from.name, polarity, tones[tap],
                           LinearRamp (polarity * from.voltsPeakToPeak, LinearCircuit::rampSeconds, sampleRateHz) });
    }
    deviceSamples_.resize (devices_ ? taps_.size() : 0);
    present_.resize (taps_.size());
}

int RailStop::mixingKnob() const noexcept
{
    return tapCount() + (linear_ ? linear_->mixingKnob() : devices_->mixingKnob());
}

std::optional<int> RailStop::findKnob (const PartKnob& knob) const
{
    if (const auto index = linear_ ? linear_->findKnob (knob) : devices_->findKnob (knob))
        return tapCount() + *index;
    return {};
}

std::optional<int> RailStop::findTapLevelKnob (const std::string& tapName) const
{
    const auto found = std::ranges::find (taps_, tapName, &TapFeed::name);
    if (found == taps_.end())
        return {};
    return static_cast<int> (found - taps_.begin());
}

void RailStop::setKnobTarget (int knobIndex, double value) noexcept
{
    if (knobIndex < 0 || ! std::isfinite (value))
        return;
    if (knobIndex >= tapCount())
    {
        if (linear_)
            linear_->setKnobTarget (knobIndex - tapCount(), value);
        else
            devices_->setKnobTarget (knobIndex - tapCount(), value);
        return;
    }
    TapFeed& tap = taps_[static_cast<std::size_t> (knobIndex)];
    tap.level.setTarget (tap.polarity * std::clamp (value, 0.0, TapBus::highestLevel));
}

bool RailStop::knobsMove() const noexcept
{
    return networkMoves() || draw_.isMoving()
           || std::ranges::any_of (taps_, [] (const TapFeed& tap) { return tap.level.isMoving(); });
}

void RailStop::resetNetwork() noexcept
{
    if (linear_)
        linear_->reset();
    else
        devices_->reset();
}

bool RailStop::move() noexcept
{
    if (draw_.isMoving())
    {
        if (weight_ == 0.0)
            resetNetwork();
        draw_.advance();
        weight_ = draw_.value();
        if (linear_)
            linear_->moveKnobs();
        return true;
    }
    if (! isOut())
        return linear_ && linear_->moveKnobs();

    // Out, only the mixing resistor still counts, and only if it is grounded: the others hear it on its way.
    if (linear_)
        return linear_->moveKnobs();
    const bool isTurned = devices_->isMoving();
    if (isTurned)
        devices_->reset();
    return isTurned;
}

void RailStop::addTo (BusNode::Instant& instant) const noexcept
{
    if (devices_)
    {
        instant.amps += weight_ * devices_->presentAmps();
        return;
    }
    const double siemens = weight_ * linear_->conductance();
    instant.amps += siemens * linear_->presentFree();
    instant.kernel += weight_ * siemens * linear_->presentKernel();
    instant.siemens += weight_ * siemens;
}

void RailStop::setBusVolts (double volts) noexcept
{
    if (linear_)
        linear_->setBusVolts (weight_ * volts);
}

std::span<double, RailStop::length> RailStop::samplesOf (std::size_t tap) noexcept
{
    return linear_ ? linear_->samplesOf (static_cast<int> (tap)) : std::span (deviceSamples_[tap]);
}

void RailStop::begin (int frame) noexcept
{
    for (std::size_t tap = 0; tap < taps_.size(); ++tap)
        taps_[tap].level.apply (std::span<const double, length> (taps_[tap].tone->volts() + frame, length),
                                samplesOf (tap));
    if (linear_)
        linear_->begin();
}

void RailStop::addSteadyTo (BusNode::Stops& stops) const noexcept
{
    stops.siemens += retiredSiemens();
    if (isOut() || ! linear_)
        return;
    const double siemens = weight_ * weight_ * linear_->conductance();
    for (std::size_t sample = 0; sample < stops.kernel.size(); ++sample)
        stops.kernel[sample] += siemens * linear_->kernel()[sample];
    stops.siemens += siemens;
}

void RailStop::addTo (BusNode::Samples& amps) const noexcept
{
    if (! linear_)
        return;
    const double siemens = weight_ * linear_->conductance();
    for (std::size_t sample = 0; sample < amps.size(); ++sample)
        amps[sample] += siemens * linear_->free()[sample];
}

void RailStop::finish (const BusNode::Samples& busVolts) noexcept
{
    if (! linear_)
        return;
    BusNode::Samples seen = busVolts;
    for (double& volts : seen)
        volts *= weight_;
    linear_->finish (seen);
}

void RailStop::openSample (std::size_t sample) noexcept
{
    for (std::size_t tap = 0; tap < taps_.size(); ++tap)
        present_[tap] = deviceSamples_[tap][sample];
    devices_->openFrame (present_);
}

DeviceBranch::Reading RailStop::reading (double busVolts) noexcept
{
    const auto reading = devices_->reading (weight_ * busVolts);
    return { weight_ * reading.amps, weight_ * weight_ * reading.slope };
}

void RailStop::closeSample (double busVolts) noexcept
{
    devices_->closeFrame (weight_ * busVolts);
}

double RailStop::retiredSiemens() const noexcept
{
    return isGroundedWhenOut_ ? (1.0 - weight_ * weight_) * conductance() : 0.0;
}

std::vector<int> RailStop::adoptionMap (const RailStop& other) const
{
    if (linear_ && other.linear_)
        return linear_->adoptionMap (*other.linear_);
    if (devices_ && other.devices_)
        return devices_->adoptionMap (*other.devices_);
    return {};
}

void RailStop::adopt (const RailStop& other, std::span<const int> map) noexcept
{
    if (linear_ && other.linear_)
        linear_->adoptStates (*other.linear_, map);
    if (devices_ && other.devices_)
        devices_->adoptStates (*other.devices_, map);
    const bool drawn = draw_.isDrawn();
    draw_ = other.draw_;
    draw_.setDrawn (drawn);
    weight_ = draw_.value();
}

} // namespace stopwright
