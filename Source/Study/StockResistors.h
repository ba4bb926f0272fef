// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Units/PreferredValues.h"

#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace stopwright
{

/// One resistor, or two of them joined.
struct ResistorChoice
{
    enum class Joined
    {
        single,
        series,
        parallel
    };

    Joined joined = Joined::single;
    double first = 0.0;
    double second = 0.0; ///< of a pair
    double ohms = 0.0;   ///< of the whole
};

/// The best of each kind, best by least cost; a kind without a choice is empty.
struct StockChoices
{
    std::optional<ResistorChoice> single, series, parallel;
};

/// Level of what is proportional to 1 / R when the choice stands for the value that was wished for: virtual earths.
/// Threading: [any].
double virtualEarthErrorDb (double wishedOhms, const ResistorChoice& choice) noexcept;

/// From parts in hand, each there as often as needed: one, two in series, two in parallel. `cost` has one least value,
/// near `wishedOhms`, so that only the neighbours of that value are asked for. Threading: [control].
/// Fails: Error unless every part is above zero.
StockChoices
    chooseFromStock (std::span<const double> parts, double wishedOhms, const std::function<double (double ohms)>& cost);

/// The member of a series of least cost among those around the wished value. Threading: [control].
ResistorChoice chooseFromSeries (Series series, double wishedOhms, const std::function<double (double ohms)>& cost);

} // namespace stopwright
