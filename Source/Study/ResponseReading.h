// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/BenchPoint.h"
#include "Study/ResponseTable.h"

#include <string>
#include <vector>

namespace stopwright
{

/// The responses from each tap of a card to a place, and where the partials of one key lie on them.
struct ResponseReading
{
    struct Partial
    {
        double harmonic = 0.0; ///< counted from the key's 8 ft pitch
        ResponseRow row;
        bool isInWave = true; ///< whether the tap's wave holds it
    };

    struct Curve
    {
        std::string tap;
        std::vector<ResponseRow> rows;
        std::vector<Partial> partials; ///< those from lowestHz to highestHz
    };

    static constexpr double lowestHz = 20.0;
    static constexpr double highestHz = 20000.0;

    int key = 60;
    double keyHz = 0.0;
    std::vector<Curve> curves; ///< one for each tap of the card
};

/// Levels re each tap's open-circuit voltage, its polarity not counted. Range: points from 2 on, log-spaced.
/// Threading: [control]. Fails: Error on a key outside 0 .. 127.
ResponseReading responseReading (const BenchPoint& point, int key, int points = 241);

} // namespace stopwright
