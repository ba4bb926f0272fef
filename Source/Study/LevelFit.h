// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

namespace stopwright
{

/// A row of levels against the row that is wanted, once the gain that fits best is taken out of it. All in dB.
struct LevelFit
{
    double offsetDb = 0.0;           ///< what has to be taken off the found levels
    std::vector<double> residualsDb; ///< found - wanted - offset, in the order given
    double rmsDb = 0.0;
    double largestDb = 0.0; ///< of the residuals' magnitudes
};

/// The offset is the mean difference, which makes the rms of what remains the smallest (least squares, closed form).
/// Both rows are of the same length and finite; nothing in them gives all zero. Threading: [control].
LevelFit fitLevels (std::span<const double> wantedDb, std::span<const double> foundDb);

} // namespace stopwright
