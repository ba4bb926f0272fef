// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace stopwright
{

/// A tablet that makes the keys of one division play another as well, or the same one an octave away. Couplers do not
/// chain: a key that a coupler plays plays nothing further.
struct Coupler
{
    std::string name;
    std::string from;   ///< division whose keys are played
    std::string to;     ///< division that sounds
    int octaves = 0;    ///< -1, 0 or 1; not 0 within one division
    bool drawn = false; ///< when the instrument is opened

    bool operator== (const Coupler&) const = default;
};

} // namespace stopwright
