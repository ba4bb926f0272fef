// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/LatestValues.h"

#include <gtest/gtest.h>

#include <array>
#include <thread>

namespace stopwright
{
namespace
{

TEST (LatestValues, KeepsTheLatestOfEach)
{
    LatestValues values (3);
    EXPECT_FALSE (values.takeNotice());
    values.put (0, 1.0);
    values.put (2, 2.0);
    values.put (2, 3.0);

    EXPECT_TRUE (values.takeNotice());
    EXPECT_FALSE (values.takeNotice());
    EXPECT_EQ (values.take (0), 1.0);
    EXPECT_FALSE (values.take (1));
    EXPECT_EQ (values.take (2), 3.0);
    EXPECT_FALSE (values.take (2));
    EXPECT_EQ (values.lastPut (2), 3.0);
    EXPECT_FALSE (values.lastPut (1));
}

TEST (LatestValues, TheLastValueAlwaysArrives)
{
    constexpr int rounds = 300;
    constexpr int turns = 200;
    LatestValues values (4);
    for (int round = 0; round < rounds; ++round)
    {
        std::thread writer (
            [&]
            {
                for (int turn = 1; turn <= turns; ++turn)
                    for (std::size_t knob = 0; knob < values.size(); ++knob)
                        values.put (knob, round * turns + turn);
            });

        std::array<double, 4> heard {};
        const auto listen = [&]
        {
            if (! values.takeNotice())
                return;
            for (std::size_t knob = 0; knob < values.size(); ++knob)
                if (const auto value = values.take (knob))
                    heard[knob] = *value;
        };
        for (int look = 0; look < 50; ++look)
            listen();
        writer.join();
        listen();
        for (const double value : heard)
            ASSERT_EQ (value, round * turns + turns);
    }
}

} // namespace
} // namespace stopwright
