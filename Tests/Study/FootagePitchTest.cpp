// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/FootagePitch.h"

#include "Organ/Instrument.h"
#include "Study/SampleCards.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{

TEST (FootagePitch, IsTheExactFractionWhereTheGeneratorIs)
{
    EXPECT_EQ (pitchRatio (880.0, 440.0, Footage::parse ("4")), 2.0);
    EXPECT_EQ (pitchRatio (440.0, 440.0, Footage::parse ("4")), 1.0) << "broken back an octave";
    const double tempered = std::exp2 (19.0 / 12.0); // nineteen semitones
    EXPECT_NEAR (pitchRatio (440.0 * tempered, 440.0, Footage::parse ("2 2/3")), tempered, 1e-12);
}

TEST (FootagePitch, OfAUnisonUndoesBreakingBack)
{
    Instrument organ;
    organ.divisions = { { "Manual", 36, 96, {} } };
    organ.tuning.top = TopBehaviour::breakBack;
    const auto tuning = keySourceOf (organ, "Manual", Card()).tuning;
    EXPECT_EQ (unisonRatio (tuning, 96, Footage::parse ("1")), 8.0) << "C7 at 1 ft sounds C9";
    EXPECT_EQ (unisonRatio (keysUpToC9().tuning, 96, Footage::parse ("1")), 8.0) << "and here nothing";
    EXPECT_EQ (unisonRatio (tuning, 60, Footage::parse ("16")), 0.5);
    EXPECT_NEAR (unisonRatio (tuning, 60, Footage::parse ("2 2/3")), std::exp2 (19.0 / 12.0), 1e-9);
}

TEST (FootagePitch, KnowsWholeMultiples)
{
    EXPECT_EQ (wholeMultiple (3.0 * (1.0 + 1e-10)), 3);
    EXPECT_FALSE (wholeMultiple (2.9966));
    EXPECT_FALSE (wholeMultiple (0.5));
    EXPECT_FALSE (wholeMultiple (std::nan ("")));
    EXPECT_FALSE (wholeMultiple (1e300));
}

} // namespace stopwright
