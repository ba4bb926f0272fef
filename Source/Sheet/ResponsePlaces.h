// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/ResponseReading.h"

#include <string>
#include <vector>

namespace stopwright
{

/// A frequency of a response whose numbers can be told: those of all taps together.
struct ResponsePlace
{
    double frequencyHz = 0.0;
    double magnitudeDb = 0.0; ///< of the first tap that has it
    std::string sentence;
};

/// The key's partials in ascending frequency, or where it has none every third of an octave. Threading: [control].
std::vector<ResponsePlace> responsePlaces (const ResponseReading& reading, bool hasPhase);

/// The highest point of all curves as a sentence. Threading: [control].
std::string responsePeakText (const ResponseReading& reading);

} // namespace stopwright
