// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/Crossover.h"

#include "Units/Engineering.h"
#include "Units/Error.h"

#include <cassert>
#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double highestPartOfRate = 0.45;
constexpr double damping = std::numbers::sqrt2; // Butterworth

} // namespace

Crossover::Crossover (double crossingHz, double rateHz)
    : tangent_ (std::tan (std::numbers::pi * crossingHz / rateHz)),
      scale_ (1.0 / (1.0 + tangent_ * (tangent_ + damping)))
{
    if (! (crossingHz > 0.0 && crossingHz < highestPartOfRate * rateHz))
        throw Error ("A crossover at " + formatForReading (crossingHz, Quantity::frequency)
                     + " cannot be; give one from 0 to "
                     + formatForReading (highestPartOfRate * rateHz, Quantity::frequency) + ".");
}

Crossover::Halves Crossover::run (Section& section, double in) const noexcept
{
    const double high = (in - (damping + tangent_) * section.first - section.second) * scale_;
    const double band = section.first + tangent_ * high;
    const double low = section.second + tangent_ * band;
    section.first = band + tangent_ * high;
    section.second = low + tangent_ * band;
    return { low, high };
}

void Crossover::process (std::span<const double> in, std::span<double> low, std::span<double> high) noexcept
{
    assert (in.size() == low.size() && in.size() == high.size());
    for (std::size_t i = 0; i < in.size(); ++i)
    {
        const auto once = run (sections_[0], in[i]);
        low[i] = run (sections_[1], once.low).low;
        high[i] = run (sections_[2], once.high).high;
    }
}

void Crossover::reset() noexcept
{
    sections_ = {};
}

} // namespace stopwright
