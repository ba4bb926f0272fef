// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/LevelFit.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

LevelFit fitLevels (std::span<const double> wantedDb, std::span<const double> foundDb)
{
    LevelFit fit;
    if (wantedDb.empty())
        return fit;
    const auto count = static_cast<double> (wantedDb.size());
    for (std::size_t i = 0; i < wantedDb.size(); ++i)
        fit.offsetDb += (foundDb[i] - wantedDb[i]) / count;
    for (std::size_t i = 0; i < wantedDb.size(); ++i)
    {
        const double residual = foundDb[i] - wantedDb[i] - fit.offsetDb;
        fit.residualsDb.push_back (residual);
        fit.rmsDb += residual * residual / count;
        fit.largestDb = std::max (fit.largestDb, std::abs (residual));
    }
    fit.rmsDb = std::sqrt (fit.rmsDb);
    return fit;
}

} // namespace stopwright
