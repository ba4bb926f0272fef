// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/ReadingPicture.h"
#include "Study/WaveReading.h"

#include <optional>

namespace stopwright
{

/// Volts and seconds of a division; what is not given is chosen so that the wave is seen whole.
struct WaveChoice
{
    std::optional<double> voltsPerDivision {};
    std::optional<double> secondsPerDivision {};
};

/// A wave over ten divisions of time and eight of volts, the generators' rising edge at the left, with what the meters
/// show of it below. Five spots a division tell the volts at their time. Threading: [control].
ReadingPicture wavePicture (const WaveReading& reading, const WaveChoice& choice, const ReadingFormat& format);

/// Volts at a thousand times across the picture. Threading: [control].
std::string waveCsv (const WaveReading& reading, const WaveChoice& choice);

} // namespace stopwright
