// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/SlidingMinimum.h"

#include "Support/Random.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <vector>

namespace stopwright
{
namespace
{

TEST (SlidingMinimum, AgreesWithLookingAtAll)
{
    Random random (11);
    for (const std::size_t length :
         { std::size_t { 1 }, std::size_t { 2 }, std::size_t { 7 }, std::size_t { 8 }, std::size_t { 97 } })
    {
        SlidingMinimum minimum (length);
        std::vector<double> values;
        for (std::size_t i = 0; i < 2000; ++i)
        {
            // Runs of equal and of falling values are the hard cases.
            values.push_back (random.chance (0.3) && i > 0 ? values.back() : random.integer (0, 20));
            const auto first =
                values.size() > length ? values.end() - static_cast<std::ptrdiff_t> (length) : values.begin();
            ASSERT_EQ (minimum.push (values.back()), *std::min_element (first, values.end())) << length << " " << i;
        }
    }
}

TEST (SlidingMinimum, ForgetsOnReset)
{
    SlidingMinimum minimum (10);
    minimum.push (-1.0);
    minimum.reset();
    EXPECT_EQ (minimum.push (2.0), 2.0);
}

} // namespace
} // namespace stopwright
