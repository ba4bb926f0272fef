// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/CompassTable.h"
#include "Study/HarmonicReading.h"
#include "Study/ResponseReading.h"
#include "Study/StageReading.h"
#include "Study/WaveReading.h"

#include <string>
#include <variant>
#include <vector>

namespace stopwright
{

/// What one of the readings came to, or why there is none.
struct ReadingResult
{
    using Compass = std::vector<CompassRow>;

    int key = 60;
    double keyHz = 0.0;
    std::string place; ///< "the card's output", "node t"
    std::variant<std::monostate, HarmonicReading, ResponseReading, WaveReading, Compass, StageReading> reading;
    std::string refusal; ///< a sentence; empty when there is a reading

    /// The reading of a kind, or nullptr when it is another.
    template <typename Reading>
    const Reading* as() const noexcept
    {
        return std::get_if<Reading> (&reading);
    }
};

} // namespace stopwright
