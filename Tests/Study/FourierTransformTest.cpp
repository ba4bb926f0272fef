// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/FourierTransform.h"

#include "Support/Random.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stopwright::test
{

namespace
{

using Complex = std::complex<double>;

/// The sum as it is defined.
std::vector<Complex> slowly (const std::vector<Complex>& values, double sign)
{
    const auto size = static_cast<double> (values.size());
    std::vector<Complex> result (values.size());
    for (std::size_t n = 0; n < values.size(); ++n)
        for (std::size_t k = 0; k < values.size(); ++k)
            result[n] +=
                values[k]
                * std::polar (1.0, sign * 2.0 * std::numbers::pi * static_cast<double> (k * n % values.size()) / size);
    return result;
}

} // namespace

TEST (FourierTransform, IsTheSumByDefinition)
{
    Random random (71);
    for (const std::size_t size : { 2U, 4U, 8U, 256U })
    {
        const FourierTransform transform (size);
        std::vector<Complex> values (size);
        for (Complex& value : values)
            value = { random.uniform (-1.0, 1.0), random.uniform (-1.0, 1.0) };
        auto forward = values;
        auto backward = values;
        transform.forward (forward);
        transform.backward (backward);
        const auto slowForward = slowly (values, -1.0);
        const auto slowBackward = slowly (values, 1.0);
        for (std::size_t index = 0; index < size; ++index)
        {
            EXPECT_LT (std::abs (forward[index] - slowForward[index]), 1e-12);
            EXPECT_LT (std::abs (backward[index] - slowBackward[index]), 1e-12);
        }
    }
}

TEST (FourierTransform, RefusesOtherSizes)
{
    for (const std::size_t size : { 0U, 1U, 3U, 100U, 1U << 25U })
        EXPECT_THROW (FourierTransform { size }, Error) << size;
}

} // namespace stopwright::test
