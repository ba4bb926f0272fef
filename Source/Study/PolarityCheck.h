// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/RailStudy.h"

#include <cstddef>
#include <span>
#include <vector>

namespace stopwright
{

/// A sum this far below the stronger of two has lost enough to be heard as hollow (common practice, no source).
inline constexpr double cancelledDb = 1.0;

/// Two stops at one key.
struct PolarityAtKey
{
    int key = 0;
    double sumDb = 0.0;    ///< both together re the stronger of them, by rms volts
    double turnedDb = 0.0; ///< the same with one of them turned
    std::vector<double>
        cancelledHarmonics;      ///< shared partials whose sum is below the stronger by more than cancelledDb;
                                 ///< counted from the 8 ft pitch, only partials within 40 dB of the strongest
    std::size_t sharedCount = 0; ///< partials within 40 dB of the strongest that both have

    bool isCancelled() const noexcept { return sumDb < -cancelledDb; }
};

/// Whether two stops want to be in the polarity they have.
struct PolarityCheck
{
    std::vector<PolarityAtKey> keys; ///< those at which both sound
    std::size_t cancelledKeys = 0;
    std::size_t cancelledKeysTurned = 0;
    double meanSumDb = 0.0; ///< of sumDb over the keys
    double meanTurnedDb = 0.0;

    /// They cancel somewhere, and do so at fewer keys when one is turned, or at as many but less.
    bool isTurnAdvised() const noexcept;
};

/// Both drawn, no others. Threading: [control].
PolarityCheck checkPolarity (const RailStudy& study, std::size_t one, std::size_t other, std::span<const int> keys);

/// The same for the two tones of one key. Threading: [control].
PolarityAtKey polarityOf (const std::vector<RailPartial>& one, const std::vector<RailPartial>& other, int key);

} // namespace stopwright
