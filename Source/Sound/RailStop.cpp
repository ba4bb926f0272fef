// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/RailStop.h"

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
    : branch_ (netlistOf (card), tablet.mixingOhms, sampleRateHz),
      draw_ (tablet.drawn, static_cast<int> (drawSeconds * sampleRateHz / length)),
      isGroundedWhenOut_ (tablet.whenRetired == WhenRetired::grounded),
      weight_ (draw_.value())
{
    for (std::size_t tap = 0; tap < card.taps.size(); ++tap)
    {
        const Tap& from = card.taps[tap];
        const double polarity = from.polarity * tablet.polarity;
        taps_.push_back ({ from.name, polarity, tones[tap],
                           LinearRamp (polarity * from.voltsPeakToPeak, LinearCircuit::rampSeconds, sampleRateHz) });
    }
    for (const TapFeed& tap : taps_)
        sources_.push_back (tap.volts.data());
}

std::optional<int> RailStop::findKnob (const PartKnob& knob) const
{
    if (const auto index = branch_.findKnob (knob))
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
        branch_.setKnobTarget (knobIndex - tapCount(), value);
        return;
    }
    TapFeed& tap = taps_[static_cast<std::size_t> (knobIndex)];
    tap.level.setTarget (tap.polarity * std::clamp (value, 0.0, TapBus::highestLevel));
}

bool RailStop::knobsMove() const noexcept
{
    return branch_.isMoving() || draw_.isMoving()
           || std::ranges::any_of (taps_, [] (const TapFeed& tap) { return tap.level.isMoving(); });
}

bool RailStop::move() noexcept
{
    if (draw_.isMoving())
    {
        if (weight_ == 0.0)
            branch_.reset();
        draw_.advance();
        weight_ = draw_.value();
        branch_.moveKnobs();
        return true;
    }
    if (! isOut())
        return branch_.moveKnobs();

    // Out, only the mixing resistor still counts, and only if it is grounded: there is nothing to hear on the way.
    const bool isTurned = branch_.isMoving();
    if (isTurned)
        branch_.reset();
    return isTurned;
}

void RailStop::addTo (BusNode::Instant& instant) const noexcept
{
    const double siemens = weight_ * branch_.conductance();
    instant.amps += siemens * branch_.presentFree();
    instant.kernel += weight_ * siemens * branch_.presentKernel();
    instant.siemens += weight_ * siemens;
}

void RailStop::begin (int frame) noexcept
{
    for (TapFeed& tap : taps_)
        tap.level.apply (std::span (tap.tone->volts() + frame, tap.volts.size()), tap.volts);
    branch_.begin (sources_.data());
}

void RailStop::addTo (BusNode::Stops& stops) const noexcept
{
    const double siemens = weight_ * branch_.conductance();
    const double siemensTwice = weight_ * siemens;
    for (std::size_t sample = 0; sample < stops.amps.size(); ++sample)
    {
        stops.amps[sample] += siemens * branch_.free()[sample];
        stops.kernel[sample] += siemensTwice * branch_.kernel()[sample];
    }
    stops.siemens += siemensTwice;
}

void RailStop::finish (const BusNode::Samples& busVolts) noexcept
{
    BusNode::Samples seen = busVolts;
    for (double& volts : seen)
        volts *= weight_;
    branch_.finish (seen);
}

double RailStop::retiredSiemens() const noexcept
{
    return isGroundedWhenOut_ ? (1.0 - weight_ * weight_) * branch_.conductance() : 0.0;
}

void RailStop::adopt (const RailStop& other, std::span<const int> map) noexcept
{
    branch_.adoptStates (other.branch_, map);
    const bool drawn = draw_.isDrawn();
    draw_ = other.draw_;
    draw_.setDrawn (drawn);
    weight_ = draw_.value();
}

} // namespace stopwright
