// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/ReadingPicture.h"
#include "Study/ResponseReading.h"

namespace stopwright
{

/// The response from each tap over frequency, 60 dB below the highest ten; the key's partials stand on it as dots, those
/// that the tap's wave lacks as open circles. With `hasPhase`, a strip of the phase from -180 to 180 degrees below.
/// A spot for each partial, or for every third of an octave where the key has none. Threading: [control].
ReadingPicture responsePicture (const ResponseReading& reading, bool hasPhase, const ReadingFormat& format);

/// A row for each frequency, magnitude and phase of each tap. Threading: [control].
std::string responseCsv (const ResponseReading& reading);

} // namespace stopwright
