// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/KeyerSettings.h"

#include "Units/Error.h"

#include <string>

namespace stopwright
{

void KeyerSettings::check() const
{
    for (const double seconds : { attackSeconds, releaseSeconds })
        if (! (seconds >= 0.0 && seconds <= 60.0))
            throw Error ("Attack and release of a keyer are between 0 and 60 seconds, not " + std::to_string (seconds)
                         + ".");

    if (! (bleedDb <= 0.0))
        throw Error ("The bleed of a keyer is at most 0 dB, not " + std::to_string (bleedDb) + ".");
}

} // namespace stopwright
