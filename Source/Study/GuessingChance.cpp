// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/GuessingChance.h"

#include <cmath>

namespace stopwright
{

namespace
{

/// Of more than half of the rounds, so that the terms fall from the first on and all are positive: nothing cancels.
double upperTail (int right, int rounds) noexcept
{
    // C(rounds, right), a power of two at a time taken out before it can grow beyond a double.
    constexpr int shift = 512;
    const double large = std::ldexp (1.0, shift);
    double ways = 1.0;
    int exponent = -rounds;
    for (int wrong = 1; wrong <= rounds - right; ++wrong)
    {
        ways = ways * (static_cast<double> (right) + wrong) / wrong;
        if (ways >= large)
        {
            ways = std::ldexp (ways, -shift);
            exponent += shift;
        }
    }

    double term = 1.0;
    double sum = 1.0;
    for (int count = right; count < rounds; ++count)
    {
        term *= static_cast<double> (rounds - count) / (count + 1.0);
        sum += term;
    }
    return std::ldexp (ways * sum, exponent);
}

} // namespace

double guessingChance (int right, int rounds) noexcept
{
    if (right <= 0)
        return 1.0;
    if (right > rounds)
        return 0.0;
    return right > rounds / 2 ? upperTail (right, rounds) : 1.0 - upperTail (rounds - right + 1, rounds);
}

} // namespace stopwright
