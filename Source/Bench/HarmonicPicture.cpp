// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/HarmonicPicture.h"

#include "Units/Decibels.h"
#include "Units/Error.h"

#include <algorithm>

namespace stopwright
{

HarmonicPicture harmonicPictureOf (const Card& card, const KeySource& keySource, int key)
{
    HarmonicPicture picture;
    picture.key = key;
    picture.keyHz = keySource.tuning.keyHz (key);
    try
    {
        const auto rows = harmonicTable (card, keySource, key);
        double strongestSource = 0.0;
        double strongestResult = 0.0;
        for (std::size_t index = 0; index < rows.size(); ++index)
        {
            strongestSource = std::max (strongestSource, rows[index].sourcePeakVolts);
            if (rows[index].outputPeakVolts > strongestResult)
            {
                strongestResult = rows[index].outputPeakVolts;
                picture.strongest = static_cast<int> (index);
            }
        }

        for (const auto& row : rows)
        {
            const double sourceDb = toDecibels (strongestSource > 0.0 ? row.sourcePeakVolts / strongestSource : 0.0);
            picture.bars.push_back ({ row.harmonic, row.frequencyHz, sourceDb, row.outputDb, row.sourcePeakVolts,
                                      row.outputPeakVolts, ! (sourceDb > absentBelowDb) });
        }
        picture.lossDb = strongestSource > 0.0 ? toDecibels (strongestResult / strongestSource) : 0.0;
    }
    catch (const Error& error)
    {
        picture.refusal = error.what();
    }
    return picture;
}

} // namespace stopwright
