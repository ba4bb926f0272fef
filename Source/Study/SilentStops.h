// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/SoundingKeys.h"

#include <cstddef>
#include <vector>

namespace stopwright
{

/// Why a drawn stop gives nothing.
enum class Silence
{
    blank,      ///< its tablet names no card
    onNoBus,    ///< it is on no mixing bus
    noKey,      ///< no key of its division sounds, held or by a coupler
    noGenerator ///< no generator exists for any of its taps at the keys that sound
};

struct SilentStop
{
    std::size_t stop = 0; ///< index in the instrument
    Silence why = Silence::noKey;
};

/// The drawn stops that put nothing on any mixing bus while those keys are held, in the instrument's order.
/// Threading: [control]. Fails: Error as soundingKeys, and on a tuning that cannot be made.
std::vector<SilentStop>
    silentStops (const Instrument& instrument, const InstrumentCards& cards, const std::vector<HeldKey>& held);

} // namespace stopwright
