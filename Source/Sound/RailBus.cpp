// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/RailBus.h"

#include <algorithm>

namespace stopwright
{

namespace
{

/// The stops with devices that sound on a bus, as one curve.
class DeviceStops
{
public:
    explicit DeviceStops (const std::vector<RailStop*>& stops) : stops_ (stops) {}

    void open (std::size_t sample) noexcept
    {
        for (RailStop* const stop : stops_)
            if (isAsked (*stop))
                stop->openSample (sample);
    }

    DeviceBranch::Reading at (double volts) noexcept
    {
        DeviceBranch::Reading sum;
        for (RailStop* const stop : stops_)
        {
            if (! isAsked (*stop))
                continue;
            const auto reading = stop->reading (volts);
            sum.amps += reading.amps;
            sum.slope += reading.slope;
        }
        return sum;
    }

    void close (double volts) noexcept
    {
        for (RailStop* const stop : stops_)
            if (isAsked (*stop))
                stop->closeSample (volts);
    }

private:
    static bool isAsked (const RailStop& stop) noexcept { return stop.hasDevices() && ! stop.isOut(); }

    const std::vector<RailStop*>& stops_;
};

} // namespace

void RailBus::process (int frame, double* volts) noexcept
{
    bool isChanged = ! isSettled_;
    for (RailStop* const stop : stops_)
        isChanged = stop->move() || isChanged;
    if (isChanged)
        settle();

    together_.amps.fill (0.0);
    bool hasDevices = false;
    for (RailStop* const stop : stops_)
    {
        if (stop->isOut())
            continue;
        stop->begin (frame);
        stop->addTo (together_.amps);
        hasDevices = hasDevices || stop->hasDevices();
    }

    BusNode::Samples busVolts {};
    BusNode::Samples out {};
    if (hasDevices)
    {
        DeviceStops devices (stops_);
        node_.solveBeside (devices, together_, busVolts, out);
    }
    else
    {
        node_.solve (together_.amps, busVolts, out);
    }
    for (RailStop* const stop : stops_)
        if (! stop->isOut())
            stop->finish (busVolts);
    std::ranges::copy (out, volts);
}

void RailBus::settle() noexcept
{
    isSettled_ = true;
    together_ = {};
    BusNode::Instant instant;
    for (const RailStop* const stop : stops_)
    {
        stop->addSteadyTo (together_);
        instant.siemens += stop->retiredSiemens();
        if (! stop->isOut())
            stop->addTo (instant);
    }
    node_.stand (together_);
    const double volts = node_.settle (instant);
    for (RailStop* const stop : stops_)
        if (! stop->isOut())
            stop->setBusVolts (volts);
}

} // namespace stopwright
