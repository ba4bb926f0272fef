// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/RailBus.h"

#include <algorithm>

namespace stopwright
{

void RailBus::process (int frame, double* volts) noexcept
{
    bool isChanged = false;
    for (RailStop* const stop : stops_)
        isChanged = stop->move() || isChanged;
    if (isChanged)
        settle();

    BusNode::Stops together;
    for (RailStop* const stop : stops_)
    {
        together.siemens += stop->retiredSiemens();
        if (stop->isOut())
            continue;
        stop->begin (frame);
        stop->addTo (together);
    }

    BusNode::Samples busVolts {};
    BusNode::Samples out {};
    node_.solve (together, busVolts, out);
    for (RailStop* const stop : stops_)
        if (! stop->isOut())
            stop->finish (busVolts);
    std::ranges::copy (out, volts);
}

void RailBus::settle() noexcept
{
    BusNode::Instant instant;
    for (const RailStop* const stop : stops_)
    {
        instant.siemens += stop->retiredSiemens();
        if (! stop->isOut())
            stop->addTo (instant);
    }
    const double volts = node_.settle (instant);
    for (RailStop* const stop : stops_)
        if (! stop->isOut())
            stop->setBusVolts (volts);
}

} // namespace stopwright
