// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <random>

namespace stopwright
{

/// Random numbers that can be had again: prints its seed, and takes another from the environment variable
/// STOPWRIGHT_SEED when there is one.
///
/// The numbers are made here from the engine's bits, since the distributions of the standard library differ between
/// libraries.
class Random
{
public:
    explicit Random (std::uint64_t seed);

    std::uint64_t bits() { return engine_(); }

    /// Even in [low, high).
    double uniform (double low, double high);

    /// Even in the logarithm, in [low, high); both positive.
    double logUniform (double low, double high);

    /// Even in low .. high, both included.
    int integer (int low, int high);

    /// True with that probability.
    bool chance (double probability) { return uniform (0.0, 1.0) < probability; }

private:
    std::mt19937_64 engine_;
};

} // namespace stopwright
