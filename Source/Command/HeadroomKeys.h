// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/SoundingKeys.h"

#include <string>
#include <vector>

namespace stopwright
{

/// What a command line says about the keys that are held.
struct KeyWish
{
    std::vector<int> chord; ///< as typed; empty: ten notes that are usual
    bool allKeys = false;
    std::string division; ///< empty: every division that a drawn stop is played from
};

/// One keyboard of a wish.
struct HeldDivision
{
    std::string name;
    std::vector<int> keys;        ///< held, ascending; empty when none of the wished ones is on it
    std::vector<int> leftAway;    ///< wished, but not on it, ascending
    bool isWholeForWant = false;  ///< every key, as none of the usual ten notes is on it
    bool isWholeAsWished = false; ///< every key, as the wish says
};

/// C2 G2 C3 E3 G3 C4 E4 G4 C5 E5.
const std::vector<int>& usualChord();

/// The keyboards, in the instrument's order. The usual notes that are not on one are left away there. So are typed ones,
/// when they are on another one; typed for a named division, or on none, they are an error.
/// Threading: [control]. Fails: Error (no such division, a typed key that is on no keyboard held).
std::vector<HeldDivision> heldDivisions (const Instrument& instrument, const KeyWish& wish);

/// All their keys.
std::vector<HeldKey> keysOf (const std::vector<HeldDivision>& divisions);

} // namespace stopwright
