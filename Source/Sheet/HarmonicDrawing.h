// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/ReadingPicture.h"
#include "Study/HarmonicReading.h"

namespace stopwright
{

/// Harmonic bars of one key: the source as wide hatched bars behind, the result as narrow solid bars in front, partials
/// that the source lacks as open circles on the base line. Each entry of a target mask is a pale window with a line at
/// its upper and lower end; the lines are heavier and in the colour of notices where the result is outside.
/// A spot for each partial. Threading: [control].
ReadingPicture harmonicPicture (const HarmonicReading& reading, const ReadingFormat& format);

/// A row for each partial, with what the mask wants of it where it does. Threading: [control].
std::string harmonicCsv (const HarmonicReading& reading);

} // namespace stopwright
