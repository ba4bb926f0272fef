// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/ResponseTable.h"

#include "Circuit/SmallSignal.h"
#include "Units/Decibels.h"
#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

void requireRange (const ResponseRequest& request)
{
    constexpr double mostHz = 1e9;
    constexpr int mostPoints = 100000;
    if (! (request.fromHz > 0.0 && request.fromHz <= request.toHz && request.toHz <= mostHz))
        throw Error (
            "A response runs from a frequency above 0 to one not below it and at most 1 GHz; give such a range.");
    if (request.points < 1 || request.points > mostPoints)
        throw Error ("A response has 1 to 100000 points, not " + std::to_string (request.points) + ".");
}

/// Log-spaced with both ends exact.
double frequencyOf (int point, const ResponseRequest& request)
{
    if (point == 0)
        return request.fromHz;
    if (point == request.points - 1)
        return request.toHz;
    return request.fromHz
           * std::pow (request.toHz / request.fromHz, static_cast<double> (point) / (request.points - 1));
}

const std::string& tapName (const Card& card, const std::string& wanted)
{
    if (card.taps.empty())
        throw Error ("The card has no tap, so nothing drives its network; give it one.");
    if (wanted.empty())
        return card.taps.front().name;

    const auto found =
        std::find_if (card.taps.begin(), card.taps.end(), [&wanted] (const Tap& tap) { return tap.name == wanted; });
    if (found != card.taps.end())
        return found->name;

    std::string names;
    for (const auto& tap : card.taps)
        names += (names.empty() ? "" : ", ") + quotedText (tap.name);
    throw Error ("The card has no tap " + quotedText (wanted) + "; it has " + names + ".");
}

} // namespace

std::vector<ResponseRow> responseTable (const Card& card, const ResponseRequest& request)
{
    requireRange (request);
    const SmallSignal network (netlistOf (card));
    const auto& tap = tapName (card, request.tap);
    const auto& node = request.node.empty() ? card.output : request.node;

    std::vector<ResponseRow> rows;
    rows.reserve (static_cast<std::size_t> (request.points));
    for (int point = 0; point < request.points; ++point)
    {
        constexpr double degreesPerRadian = 180.0 / std::numbers::pi;
        const double frequencyHz = frequencyOf (point, request);
        const auto ratio = network.response (tap, node, frequencyHz);
        rows.push_back ({ frequencyHz, toDecibels (std::abs (ratio)), std::arg (ratio) * degreesPerRadian });
    }
    return rows;
}

} // namespace stopwright
