// SPDX-License-Identifier: GPL-3.0-or-later
#include "Support/Random.h"

#include <cmath>
#include <cstdlib>
#include <iostream>

namespace stopwright
{

namespace
{

std::uint64_t chosenSeed (std::uint64_t seed)
{
    if (const char* wish = std::getenv ("STOPWRIGHT_SEED"))
        seed = std::strtoull (wish, nullptr, 10);

    std::cout << "random seed " << seed << " (STOPWRIGHT_SEED sets another)\n";
    return seed;
}

} // namespace

Random::Random (std::uint64_t seed) : engine_ (chosenSeed (seed)) {}

double Random::uniform (double low, double high)
{
    constexpr double unit = 0x1p-53;
    return low + (high - low) * static_cast<double> (engine_() >> 11) * unit;
}

double Random::logUniform (double low, double high)
{
    return low * std::exp (uniform (0.0, std::log (high / low)));
}

int Random::integer (int low, int high)
{
    const auto count = static_cast<std::uint64_t> (high - low) + 1;
    return low + static_cast<int> (engine_() % count);
}

} // namespace stopwright
