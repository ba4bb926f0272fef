// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/SoundingKeys.h"

#include "Organ/TestOrgan.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

namespace stopwright::test
{

namespace
{

using Keys = std::vector<std::vector<int>>;

} // namespace

TEST (SoundingKeys, CouplersPlayOtherKeysOnceAndDoNotChain)
{
    auto organ = emptyOrgan (passiveBus());
    organ.instrument.couplers = { { "Upper to Lower", "Lower", "Upper", 0, true },
                                  { "Octave", "Upper", "Upper", 1, true },
                                  { "Retired", "Lower", "Pedal", 0, false } };
    EXPECT_EQ (soundingKeys (organ.instrument, { { "Lower", 60 } }), (Keys { { 60 }, { 60 }, {} }));
    EXPECT_EQ (soundingKeys (organ.instrument, { { "Upper", 60 }, { "Upper", 72 }, { "Lower", 72 } }),
               (Keys { { 60, 72, 84 }, { 72 }, {} }));
    EXPECT_EQ (soundingKeys (organ.instrument, { { "Upper", 90 } }), (Keys { { 90 }, {}, {} })) << "compass ends at C7";
}

TEST (SoundingKeys, RefusesWhatIsNotThere)
{
    const auto organ = emptyOrgan (passiveBus());
    EXPECT_THROW (soundingKeys (organ.instrument, { { "Attic", 60 } }), Error);
    EXPECT_THROW (soundingKeys (organ.instrument, { { "Pedal", 66 } }), Error);
    EXPECT_THROW (allKeysOf (organ.instrument, "Attic"), Error);
    EXPECT_EQ (allKeysOf (organ.instrument).size(), 61U + 61U + 30U);
    EXPECT_EQ (allKeysOf (organ.instrument, "Pedal").size(), 30U);
}

// A bus with 220 k for each key into 10 k: ten keys give each note 2.868 dB less (230/320 of it), closed form.
TEST (SoundingKeys, AKeyedBusSags)
{
    auto organ = emptyOrgan (passiveBus());
    organ.add ("Square", bareCard());
    KeyedBus keyed;
    keyed.name = "Square 8";
    keyed.collectorOhms = 220e3;
    keyed.loadOhms = 10e3;
    organ.instrument.keyedBuses.push_back (keyed);
    const auto volts = [&] (std::size_t count)
    {
        const Keys keys { std::vector<int> (count, 60), {}, {} };
        return sagged (organ.cards, organ.instrument, keys).ofStops[0]->taps[0].voltsPeakToPeak;
    };
    EXPECT_DOUBLE_EQ (volts (1), 1.0);
    EXPECT_DOUBLE_EQ (volts (0), 1.0);
    EXPECT_NEAR (volts (10), 230.0 / 320.0, 1e-15);
    organ.instrument.keyedBuses.front().footage = Footage::parse ("4");
    EXPECT_DOUBLE_EQ (volts (10), 1.0) << "another bus";
}

} // namespace stopwright::test
