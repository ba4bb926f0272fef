// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/StreamSpec.h"

#include "Units/Error.h"

#include <algorithm>
#include <cmath>
#include <sstream>

namespace stopwright
{

namespace
{

constexpr double lowestRateHz = 8000.0;
constexpr double highestRateHz = 768000.0;

} // namespace

int internalFactor (const StreamSpec& spec) noexcept
{
    // A rate that is a hair short of the mark (a device that says 44099.9) must not cost a factor more.
    constexpr double forgiven = 1e-4;
    const double wanted = spec.lowestInternalRateHz / spec.deviceRateHz;
    return std::max (1, static_cast<int> (std::ceil (wanted * (1.0 - forgiven))));
}

void checkStream (const StreamSpec& spec)
{
    std::ostringstream sentence;
    if (! (spec.deviceRateHz >= lowestRateHz && spec.deviceRateHz <= highestRateHz))
        sentence << "The sound device's rate of " << spec.deviceRateHz << " Hz cannot be used: choose one from "
                 << lowestRateHz << " to " << highestRateHz << " Hz.";
    else if (spec.maxFrames < 1)
        sentence << "The sound device's block of " << spec.maxFrames << " frames cannot be used: choose at least 1.";
    else
        return;
    throw Error (sentence.str());
}

} // namespace stopwright
