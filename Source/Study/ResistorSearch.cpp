// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/ResistorSearch.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stopwright
{

std::optional<double> resistorWhereZero (const std::function<double (double ohms)>& levelDb)
{
    constexpr int mostSteps = 100;
    constexpr int everyThird = 3;
    constexpr double nearEnoughDb = 1e-12;
    double low = std::log (lowestSoldOhms);
    double high = std::log (highestSoldOhms);
    double lowDb = levelDb (lowestSoldOhms);
    double highDb = levelDb (highestSoldOhms);
    if (! (lowDb >= 0.0 && highDb <= 0.0))
        return {};
    double here = low;
    for (int step = 0; step < mostSteps; ++step)
    {
        const bool canLean = std::isfinite (lowDb) && std::isfinite (highDb) && lowDb > highDb;
        here = canLean && step % everyThird != everyThird - 1 ? (high * lowDb - low * highDb) / (lowDb - highDb)
                                                              : 0.5 * (low + high);
        const double db = levelDb (std::exp (here));
        if (std::abs (db) <= nearEnoughDb || ! (here > low && here < high))
            break;
        // The end that stays counts half, so that it does not stay for ever.
        (db > 0.0 ? low : high) = here;
        (db > 0.0 ? lowDb : highDb) = db;
        (db > 0.0 ? highDb : lowDb) *= 0.5;
    }
    return std::exp (here);
}

std::optional<double> resistorWhereLeast (const std::function<double (double ohms)>& cost)
{
    constexpr int steps = 24; // four a decade
    constexpr int sections = 44;
    const double start = std::log (lowestSoldOhms);
    const double width = (std::log (highestSoldOhms) - start) / steps;
    int least = 0;
    double leastCost = cost (lowestSoldOhms);
    for (int step = 1; step <= steps; ++step)
    {
        const double here = cost (std::exp (start + step * width));
        if (here < leastCost)
        {
            least = step;
            leastCost = here;
        }
    }

    constexpr double golden = std::numbers::phi - 1.0;
    double low = start + std::max (least - 1, 0) * width;
    double high = start + std::min (least + 1, steps) * width;
    double lower = high - golden * (high - low);
    double upper = low + golden * (high - low);
    double lowerCost = cost (std::exp (lower));
    double upperCost = cost (std::exp (upper));
    for (int section = 0; section < sections; ++section)
    {
        if (lowerCost < upperCost)
        {
            high = upper;
            upper = lower;
            upperCost = lowerCost;
            lower = high - golden * (high - low);
            lowerCost = cost (std::exp (lower));
        }
        else
        {
            low = lower;
            lower = upper;
            lowerCost = upperCost;
            upper = low + golden * (high - low);
            upperCost = cost (std::exp (upper));
        }
    }
    const double found = std::exp (0.5 * (low + high));
    const bool isNearAnEnd = least == 0 || least == steps;
    if (isNearAnEnd && ! (cost (found) < leastCost))
        return {};
    return found;
}

} // namespace stopwright
