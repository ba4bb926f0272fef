// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/ReadingPicture.h"
#include "Study/CompassTable.h"

#include <span>

namespace stopwright
{

/// What the level of a key is told by.
enum class CompassLevel
{
    rms,
    aWeighted ///< IEC 61672-1
};

/// Shades of the map, from the strongest partial of each key downwards, 10 dB each; below the last it is blank.
inline constexpr int compassShades = 6;

/// Which shade a level re the strongest partial has: 0 the fullest, compassShades for blank. Threading: [any].
int compassShade (double levelDb) noexcept;

/// The level along the keys as a line, in dBV (or dBu where that is the unit), and below it key by harmonic as shades of
/// one ink, which differ in lightness alone. A wedge stands over the column of `keyInHand`; -1 for none.
/// Spots: for each key its level, then its harmonics from the highest down. Threading: [control].
ReadingPicture
    compassPicture (std::span<const CompassRow> rows, CompassLevel level, int keyInHand, const ReadingFormat& format);

/// A row for each key. Threading: [control].
std::string compassCsv (std::span<const CompassRow> rows);

} // namespace stopwright
