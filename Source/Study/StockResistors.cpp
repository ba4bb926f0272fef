// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/StockResistors.h"

#include "Units/Decibels.h"
#include "Units/Error.h"

#include <algorithm>

namespace stopwright
{

namespace
{

using Choices = std::vector<ResistorChoice>;

std::optional<ResistorChoice>
    bestAround (Choices choices, double wishedOhms, const std::function<double (double ohms)>& cost)
{
    if (choices.empty())
        return {};
    std::ranges::sort (choices, {}, &ResistorChoice::ohms);
    const auto above = std::ranges::lower_bound (choices, wishedOhms, {}, &ResistorChoice::ohms);
    if (above == choices.end())
        return choices.back();
    if (above == choices.begin())
        return choices.front();
    return cost (above->ohms) < cost (std::prev (above)->ohms) ? *above : *std::prev (above);
}

} // namespace

double virtualEarthErrorDb (double wishedOhms, const ResistorChoice& choice) noexcept
{
    return toDecibels (wishedOhms / choice.ohms);
}

StockChoices
    chooseFromStock (std::span<const double> parts, double wishedOhms, const std::function<double (double ohms)>& cost)
{
    using Joined = ResistorChoice::Joined;
    Choices single;
    Choices series;
    Choices parallel;
    for (std::size_t first = 0; first < parts.size(); ++first)
    {
        const double a = parts[first];
        if (! (a > 0.0))
            throw Error ("A resistor in hand must be above 0 ohm; leave it out.");
        single.push_back ({ Joined::single, a, 0.0, a });
        for (const double b : parts.first (first + 1))
        {
            series.push_back ({ Joined::series, std::max (a, b), std::min (a, b), a + b });
            parallel.push_back ({ Joined::parallel, std::min (a, b), std::max (a, b), a * b / (a + b) });
        }
    }
    return { bestAround (single, wishedOhms, cost), bestAround (series, wishedOhms, cost),
             bestAround (parallel, wishedOhms, cost) };
}

ResistorChoice chooseFromSeries (Series series, double wishedOhms, const std::function<double (double ohms)>& cost)
{
    Choices members;
    for (const double ohms : { nextPreferred (wishedOhms, series, -1), nearestPreferred (wishedOhms, series).value,
                               nextPreferred (wishedOhms, series, 1) })
        members.push_back ({ ResistorChoice::Joined::single, ohms, 0.0, ohms });
    return *bestAround (members, wishedOhms, cost);
}

} // namespace stopwright
