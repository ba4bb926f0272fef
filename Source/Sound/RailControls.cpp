// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/RailControls.h"

#include <algorithm>
#include <iterator>

namespace stopwright
{

namespace
{

std::optional<int> numberOf (const std::vector<std::string>& names, const std::string& name, int first)
{
    const auto found = std::ranges::find (names, name);
    if (found == names.end())
        return {};
    return first + static_cast<int> (found - names.begin());
}

} // namespace

RailControls::RailControls (const Instrument& instrument, const RailRack& rack)
{
    for (const Coupler& coupler : instrument.couplers)
        couplers_.push_back (coupler.name);
    for (const Outlet& outlet : instrument.outlets)
    {
        if (outlet.kind == OutletKind::tremulant)
            tremulants_.push_back (outlets_.size());
        outlets_.push_back (outlet.name);
    }
    count_ = firstOfStops();
    for (std::size_t index = 0; index < instrument.stops.size(); ++index)
    {
        RailStop* const stop = rack.stop (index);
        if (stop == nullptr)
            continue;
        stops_.push_back ({ instrument.stops[index].name, stop, count_ });
        count_ += 1 + stop->knobCount();
    }
}

const RailControls::StopControls* RailControls::find (const std::string& tablet) const
{
    const auto found = std::ranges::find (stops_, tablet, &StopControls::tablet);
    return found == stops_.end() ? nullptr : &*found;
}

std::optional<int> RailControls::findDraw (const std::string& tablet) const
{
    const auto* const controls = find (tablet);
    return controls != nullptr ? std::optional (controls->first) : std::nullopt;
}

std::optional<int> RailControls::findCoupler (const std::string& tablet) const
{
    return numberOf (couplers_, tablet, 0);
}

std::optional<int> RailControls::findOutletSwitch (const std::string& outlet) const
{
    return numberOf (outlets_, outlet, couplerCount());
}

std::optional<int> RailControls::findTremulant (const std::string& outlet) const
{
    const auto found =
        std::ranges::find_if (tremulants_, [&] (std::size_t index) { return outlets_[index] == outlet; });
    if (found == tremulants_.end())
        return {};
    return firstOfTremulants() + 2 * static_cast<int> (found - tremulants_.begin());
}

std::optional<int> RailControls::findKnob (const std::string& tablet, const PartKnob& knob) const
{
    const auto* const controls = find (tablet);
    const auto found = controls != nullptr ? controls->stop->findKnob (knob) : std::nullopt;
    return found ? std::optional (controls->first + 1 + *found) : std::nullopt;
}

std::optional<int> RailControls::findTapLevelKnob (const std::string& tablet, const std::string& tap) const
{
    const auto* const controls = find (tablet);
    const auto found = controls != nullptr ? controls->stop->findTapLevelKnob (tap) : std::nullopt;
    return found ? std::optional (controls->first + 1 + *found) : std::nullopt;
}

std::optional<int> RailControls::findMixingKnob (const std::string& tablet) const
{
    const auto* const controls = find (tablet);
    return controls != nullptr ? std::optional (controls->first + 1 + controls->stop->mixingKnob()) : std::nullopt;
}

void RailControls::setStop (int index, double value) noexcept
{
    const auto after = std::ranges::upper_bound (stops_, index, {}, &StopControls::first);
    const StopControls& controls = *std::prev (after);
    if (index == controls.first)
        controls.stop->setDrawn (value >= 0.5);
    else
        controls.stop->setKnobTarget (index - controls.first - 1, value);
}

bool RailControls::stopsMove() const noexcept
{
    return std::ranges::any_of (stops_, [] (const auto& controls) { return controls.stop->knobsMove(); });
}

} // namespace stopwright
