// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/AsFound.h"

#include <optional>
#include <string>

namespace stopwright
{

/// One tablet of the stop rail. `cardFile` is relative to the instrument's document; empty for a blank tablet.
/// `proposed` marks the tablet the work is about.
struct StopTablet
{
    std::string name;
    std::string division;
    std::string cardFile;
    bool proposed = false;
    std::string bus;          ///< mixing bus; empty: the instrument has none, or the stop is on none
    double mixingOhms = 47e3; ///< from the card's output to the bus
    int polarity = 1;         ///< 1 or -1
    WhenRetired whenRetired = WhenRetired::grounded;
    bool drawn = false;                 ///< when the instrument is opened
    std::optional<AsFoundStop> asFound; ///< what was otherwise before the work

    bool operator== (const StopTablet&) const = default;
};

} // namespace stopwright
