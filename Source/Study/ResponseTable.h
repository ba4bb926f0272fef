// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"

#include <string>
#include <vector>

namespace stopwright
{

/// One point of a response.
struct ResponseRow
{
    double frequencyHz = 0.0;
    double magnitudeDb = 0.0;
    double phaseDegrees = 0.0; ///< -180 .. 180
};

/// What to look at: from which tap, at which node, where.
struct ResponseRequest
{
    std::string tap {};  ///< empty: the first
    std::string node {}; ///< empty: the output
    double fromHz = 20.0;
    double toHz = 20000.0;
    int points = 200; ///< 1 .. 100000, log-spaced, both ends included
};

/// Response from a tap's open-circuit voltage to a node; of diodes and transistors, to small signals about the card's
/// operating point. Threading: [control].
/// Fails: Error (unknown tap or node, bad range).
std::vector<ResponseRow> responseTable (const Card& card, const ResponseRequest& request);

} // namespace stopwright
