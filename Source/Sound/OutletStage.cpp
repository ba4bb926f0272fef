// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/OutletStage.h"

#include "Units/Error.h"

#include <cassert>
#include <cmath>

namespace stopwright
{

OutletStage::OutletStage (const Outlet& outlet, double deviceRateHz) : deviceRateHz_ (deviceRateHz)
{
    if (! (deviceRateHz > 0.0) || ! std::isfinite (deviceRateHz))
        throw Error ("The outlet '" + outlet.name + "' cannot run at " + std::to_string (deviceRateHz)
                     + " samples per second; give a positive number.");
    if (outlet.swell)
        swell_.emplace (outlet.swellFloorDb, deviceRateHz);
    if (outlet.kind == OutletKind::tremulant)
        tremulant_.emplace (outlet.tremulant, outlet.isOn, deviceRateHz);
    if (outlet.kind != OutletKind::rotary)
        return;
    try
    {
        rotary_.emplace (outlet.rotary, outlet.isOn, deviceRateHz);
    }
    catch (const Error& error)
    {
        throw Error ("Outlet '" + outlet.name + "': " + error.what());
    }
}

void OutletStage::setSwell (double position) noexcept
{
    if (swell_)
        swell_->setPosition (position);
}

void OutletStage::setOn (bool isOn) noexcept
{
    if (tremulant_)
        tremulant_->setOn (isOn);
    if (rotary_)
        rotary_->setFast (isOn);
}

void OutletStage::setTremulant (const TremulantSettings& settings) noexcept
{
    if (tremulant_)
        tremulant_->setTarget (settings);
}

void OutletStage::process (std::span<double> samples) noexcept
{
    if (swell_)
        swell_->process (samples);
    if (tremulant_)
        tremulant_->process (samples);
    if (rotary_)
        rotary_->process (samples);
}

void OutletStage::reset() noexcept
{
    if (swell_)
        swell_->finish();
    if (tremulant_)
        tremulant_->reset();
    if (rotary_)
        rotary_->reset();
}

bool OutletStage::isLike (const OutletStage& other) const noexcept
{
    return other.deviceRateHz_ == deviceRateHz_ && other.swell_.has_value() == swell_.has_value()
           && other.tremulant_.has_value() == tremulant_.has_value() && other.rotary_.has_value() == rotary_.has_value()
           && (! rotary_ || rotary_->isLike (*other.rotary_));
}

void OutletStage::copyStateFrom (const OutletStage& other) noexcept
{
    assert (isLike (other));
    if (swell_)
        swell_->copyStateFrom (*other.swell_);
    if (tremulant_)
        tremulant_->copyStateFrom (*other.tremulant_);
    if (rotary_)
        rotary_->copyStateFrom (*other.rotary_);
}

} // namespace stopwright
