// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/TargetMask.h"

#include <algorithm>
#include <limits>

namespace stopwright
{

std::string_view certaintyWord (Certainty certainty) noexcept
{
    switch (certainty)
    {
        case Certainty::published:
            return "published";
        case Certainty::measured:
            return "measured";
        case Certainty::commonPractice:
            break;
    }
    return "common practice";
}

double TargetMask::levelReStrongest (const MaskHarmonic& harmonic) const noexcept
{
    if (reference == MaskReference::strongest)
        return harmonic.wish.levelDb;
    double strongest = -std::numeric_limits<double>::infinity();
    for (const MaskHarmonic& other : harmonics)
        if (! other.atMost)
            strongest = std::max (strongest, other.wish.levelDb);
    return harmonic.wish.levelDb - (strongest > -std::numeric_limits<double>::infinity() ? strongest : 0.0);
}

} // namespace stopwright
