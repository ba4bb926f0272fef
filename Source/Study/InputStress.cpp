// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/InputStress.h"

#include <algorithm>

namespace stopwright
{

namespace
{

double amps (double excessVolts, double ohms)
{
    return excessVolts > 0.0 ? excessVolts / ohms : 0.0; // of no ohms: infinite
}

double seriesOhms (double excessVolts, double sourceOhms, double pinAmps)
{
    return std::max (0.0, excessVolts / pinAmps - sourceOhms);
}

} // namespace

InputStress inputStress (const InputDrive& drive, const InputLimits& limits) noexcept
{
    const double off = drive.peakVolts - limits.diodeVolts;
    const double on = off - std::min (-limits.rails.low, limits.rails.high);
    const double ohms = drive.sourceOhms + drive.seriesOhms;
    return { amps (on, ohms), amps (off, ohms), seriesOhms (on, drive.sourceOhms, limits.pinAmps),
             seriesOhms (off, drive.sourceOhms, limits.pinAmps) };
}

} // namespace stopwright
