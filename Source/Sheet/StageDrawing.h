// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/ReadingPicture.h"
#include "Study/StageReading.h"

#include <span>
#include <string>

namespace stopwright
{

/// The levels of an instrument's stages in dB re the nearer of their limits, which is the heavy line at 0: the peak bound
/// as a wide hatched bar, the rms in front of it, the room left in numbers. `clipped` are the names (titleOf) of stages
/// whose lamp is lit: a triangle stands before them. Where there are more stages than lines, those with the most room are
/// left out and counted. A spot for each line. Threading: [control].
ReadingPicture
    stagePicture (const StageReading& reading, std::span<const std::string> clipped, const ReadingFormat& format);

/// A row for each stage. Threading: [control].
std::string stageCsv (const StageReading& reading);

} // namespace stopwright
