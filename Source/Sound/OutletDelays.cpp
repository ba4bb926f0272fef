// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/OutletDelays.h"

#include "Sound/OutletStage.h"

namespace stopwright
{

std::vector<double> outletDelaySeconds (const Instrument& instrument, double deviceRateHz)
{
    std::vector<double> delays;
    delays.reserve (instrument.outlets.size());
    for (const Outlet& outlet : instrument.outlets)
        delays.push_back (OutletStage (outlet, deviceRateHz).latencyFrames() / deviceRateHz);
    return delays;
}

} // namespace stopwright
