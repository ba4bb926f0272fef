// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Tone/Wave.h"
#include "Units/Footage.h"

namespace stopwright
{

/// A keyed wave as a tap takes it or a keyed bus carries it: volts peak to peak of the wave, ohms behind it.
struct WaveSource
{
    Wave wave;
    Footage footage;
    double voltsPeakToPeak = 1.0;
    double sourceOhms = 0.0;

    bool operator== (const WaveSource&) const = default;
};

} // namespace stopwright
