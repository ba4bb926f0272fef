// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/KeyGate.h"

#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

namespace stopwright
{

namespace
{

constexpr double rateHz = 192000.0;

KeyerSettings rcSettings (double attackSeconds, double releaseSeconds)
{
    return { .shape = KeyerShape::rc, .attackSeconds = attackSeconds, .releaseSeconds = releaseSeconds };
}

std::vector<double> run (KeyGate& gate, const GateShape& shape, std::size_t frames)
{
    std::vector<double> out;
    std::vector<float> chunk (GateShape::chunkFrames);
    while (out.size() < frames)
    {
        const int count = static_cast<int> (std::min (chunk.size(), frames - out.size()));
        gate.run (shape, chunk.data(), count);
        out.insert (out.end(), chunk.begin(), chunk.begin() + count);
    }
    return out;
}

/// Seconds until a falling or rising run first passes a level, between frames by a straight line.
double secondsTo (const std::vector<double>& openness, double level)
{
    for (std::size_t i = 1; i < openness.size(); ++i)
        if ((openness[i] - level) * (openness[i - 1] - level) <= 0.0)
            return (static_cast<double> (i) + (level - openness[i - 1]) / (openness[i] - openness[i - 1])) / rateHz;
    return -1.0;
}

} // namespace

// 10 k and 0.47 uF: 10 to 90 % in tau ln 9 = 10.327 ms, down to -60 dB in tau ln 1000 = 32.47 ms. Source: first-order RC.
TEST (KeyGate, RcTakesItsTime)
{
    const GateShape shape (rcSettings (4.7e-3, 4.7e-3), rateHz);
    KeyGate gate;
    gate.begin (true, shape);
    const auto attack = run (gate, shape, 40000);
    EXPECT_NEAR (secondsTo (attack, 0.9) - secondsTo (attack, 0.1), 10.327e-3, 1e-6);
    EXPECT_EQ (gate.openness(), 1.0);
    EXPECT_FALSE (gate.isMoving());

    gate.begin (false, shape);
    const auto release = run (gate, shape, 40000);
    EXPECT_NEAR (secondsTo (release, 1e-3) + 1.0 / rateHz, 32.47e-3, 1e-5);
    EXPECT_NEAR (secondsTo (release, 1e-2) + 1.0 / rateHz, 21.64e-3, 1e-5);
    EXPECT_TRUE (gate.isAtRest());
}

TEST (KeyGate, LineIsStraightWithRoundCorners)
{
    const GateShape shape ({ .attackSeconds = 0.01, .releaseSeconds = 0.02 }, rateHz);
    KeyGate gate;
    gate.begin (true, shape);
    const auto rise = run (gate, shape, 1920);
    EXPECT_EQ (gate.openness(), 1.0) << "after ten milliseconds to the frame";
    EXPECT_NEAR (rise[959], 0.5, 1e-6);

    // Speed: the same in the middle half, none at the ends, never a step.
    const double speed = rise[960] - rise[959];
    EXPECT_NEAR (rise[1400] - rise[1399], speed, 2e-7);
    EXPECT_NEAR (speed, 1.0 / (0.75 * 1920.0), 2e-7);
    EXPECT_LT (rise[0], 1e-7);
    for (std::size_t i = 1; i < rise.size(); ++i)
    {
        ASSERT_GE (rise[i], rise[i - 1]);
        ASSERT_LT (rise[i] - rise[i - 1], speed + 2e-7);
    }

    gate.begin (false, shape);
    EXPECT_NEAR (run (gate, shape, 3840)[1919], 0.5, 1e-6);
    EXPECT_TRUE (gate.isAtRest());
}

TEST (KeyGate, LineIsNeverShorterThanThreeMilliseconds)
{
    const GateShape shape ({ .attackSeconds = 0.0, .releaseSeconds = 0.0 }, rateHz);
    KeyGate gate;
    gate.begin (true, shape);
    EXPECT_LT (run (gate, shape, 575).back(), 1.0);
    EXPECT_EQ (run (gate, shape, 1).back(), 1.0);
}

TEST (KeyGate, TurningRoundGoesOnFromTheLevelReached)
{
    for (const KeyerShape kind : { KeyerShape::linear, KeyerShape::rc })
    {
        const GateShape shape ({ .shape = kind, .attackSeconds = 0.01, .releaseSeconds = 0.02 }, rateHz);
        KeyGate gate;
        gate.begin (true, shape);
        run (gate, shape, 100000);
        gate.begin (false, shape);
        const double reached = run (gate, shape, 1500).back();
        EXPECT_GT (reached, 0.3);
        EXPECT_LT (reached, 0.9);

        gate.begin (true, shape);
        const auto again = run (gate, shape, 100000);
        EXPECT_NEAR (again.front(), reached, 1.0 / 1500.0);
        EXPECT_GE (again.front(), reached - 1e-6);
        EXPECT_EQ (again.back(), 1.0);
    }
}

TEST (KeyGate, EventsKeepTheirOrderAndRepeatsAreHarmless)
{
    KeyGate gate;
    gate.post (false, 3);
    EXPECT_FALSE (gate.hasEvents());
    gate.post (true, 10);
    gate.post (true, 20);
    gate.post (false, 5);
    EXPECT_TRUE (gate.hasEventBefore (11));
    EXPECT_FALSE (gate.hasEventBefore (10));
    EXPECT_EQ (gate.takeEvent().frame, 10);
    EXPECT_EQ (gate.takeEvent().frame, 10) << "never before the one ahead of it";
    EXPECT_FALSE (gate.hasEvents());
}

TEST (KeyGate, TooManyEventsNeverLeaveItOpen)
{
    for (int events = 1; events <= 40; ++events)
    {
        KeyGate gate;
        for (int i = 0; i < events; ++i)
            gate.post (i % 2 == 0, i);

        bool down = false;
        while (gate.hasEvents())
            down = gate.takeEvent().down;

        EXPECT_EQ (down, events % 2 == 1) << events;
    }
}

TEST (KeyerSettings, RefusesWhatNoKeyerDoes)
{
    EXPECT_THROW (rcSettings (-0.001, 0.01).check(), Error);
    EXPECT_THROW (rcSettings (0.01, std::nan ("")).check(), Error);
    EXPECT_THROW ((KeyerSettings { .bleedDb = 3.0 }.check()), Error);
    EXPECT_NO_THROW (KeyerSettings {}.check());
}

} // namespace stopwright
