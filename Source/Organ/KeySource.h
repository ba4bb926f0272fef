// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"
#include "Tone/KeyerSettings.h"
#include "Tone/Tuning.h"

namespace stopwright
{

/// What a card is played from: the generators, how the keys let their waves through, and the compass.
struct KeySource
{
    Tuning tuning;
    KeyerSettings keyer;
    int lowestKey = 36;  ///< C2
    int highestKey = 96; ///< C7
};

/// A card with no instrument around it: equal temperament at A4 = 440 Hz, exact mutations, every generator up to
/// highestHz, 61 keys C2 to C7. Threading: [control]. Fails: Error on a highest generator that cannot be.
KeySource keySourceForCardAlone (const Card& card, double highestHz = 20000.0);

} // namespace stopwright
