// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/RestReading.h"

#include "Circuit/Junction.h"
#include "Circuit/OperatingPoint.h"
#include "Units/Engineering.h"

#include <algorithm>

namespace stopwright
{

namespace
{

/// A transistor's or diode's first lead takes the current that is meant; a supply's gives it.
RestReading readingOf (const OperatingPoint::Device& device)
{
    const double sign = device.region == OperatingPoint::Region::supplying ? -1.0 : 1.0;
    return { device.part, formatForReading (sign * device.leadAmps.front(), Quantity::current),
             std::string (regionWords (device.region)) };
}

} // namespace

std::vector<RestReading> restReadingsOf (const Card& card)
{
    const auto netlist = netlistOf (card);
    if (! hasDevices (netlist))
        return {};
    const auto search = searchOperatingPoint (netlist);
    if (! search.point)
        return {};

    std::vector<RestReading> readings;
    std::ranges::transform (search.point->devices, std::back_inserter (readings), readingOf);
    for (const auto& [node, volts] : search.point->nodeVolts)
        readings.push_back ({ "node " + node, formatForReading (volts, Quantity::voltage), {} });
    return readings;
}

} // namespace stopwright
