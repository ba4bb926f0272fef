// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/Tuning.h"

#include "Units/Error.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stopwright
{

namespace
{

// Twelve bits of dividers over a half period, and 2^16 samples of a block, stay below 2^63 with these.
constexpr int halfPeriodBits = 50;
constexpr int sampleBits = 46;

/// The half period of a chain is cut into so many equal parts at most, for its mutations to share: each part is then
/// still so long that rounding it moves the pitch by less than a thousandth of a cent.
constexpr std::int64_t mostParts = std::int64_t { 1 } << 28;

/// Fails: Error when the mutations of one chain have no common division that fits.
std::int64_t commonMultiple (std::int64_t multiple, std::int64_t numerator)
{
    if (numerator > mostParts || multiple / std::gcd (multiple, numerator) > mostParts / numerator)
        throw Error ("These mutations cannot all run locked to one generator, because their fractions have no common "
                     "division that is fine enough; use fewer of them, or simpler fractions such as 2 2/3.");
    return std::lcm (multiple, numerator);
}

bool isWhole (double value) noexcept
{
    return std::abs (value - std::round (value)) < 1.0e-6 * std::max (1.0, std::abs (value) * 1.0e-9);
}

} // namespace

Tuning::TimeBase Tuning::timeBase (double sampleRateHz) const
{
    if (! (sampleRateHz >= 8000.0 && sampleRateHz <= 1.0e7))
        throw Error ("A sample rate must be between 8000 and 10000000 Hz.");

    if (clockHz_ > 0.0 && isWhole (clockHz_ * 1000.0) && isWhole (sampleRateHz * 1000.0))
        return wholeTimeBase (std::llround (clockHz_ * 1000.0), std::llround (sampleRateHz * 1000.0));

    return roundedTimeBase (sampleRateHz);
}

Tuning::TimeBase Tuning::wholeTimeBase (std::int64_t clockMilliHz, std::int64_t rateMilliHz) const
{
    // A half period of clock / N lasts N half ticks; a sample lasts 2 clock / rate half ticks.
    const std::int64_t common = std::gcd (2 * clockMilliHz, rateMilliHz);
    const std::int64_t sample = 2 * clockMilliHz / common;
    const std::int64_t halfTick = rateMilliHz / common;

    std::int64_t longest = sample;
    for (const Master& master : masters_)
        longest =
            std::max (longest, std::int64_t { master.octavesAboveDivided < 0 ? 4 : 1 } * master.divisor * halfTick);

    // As fine as fits, so that the falling edge of a pulse can stand anywhere; at least one bit for the octave above.
    int bits = 0;
    while ((longest << (bits + 1)) < (std::int64_t { 1 } << halfPeriodBits)
           && (sample << (bits + 1)) <= (std::int64_t { 1 } << sampleBits))
        ++bits;

    if (bits < 1)
        return roundedTimeBase (static_cast<double> (rateMilliHz) / 1000.0);

    TimeBase base { sample << bits, {} };
    for (const Master& master : masters_)
        base.halfPeriodUnits.push_back ((master.divisor * halfTick) << (bits - master.octavesAboveDivided));

    return base;
}

Tuning::TimeBase Tuning::roundedTimeBase (double sampleRateHz) const
{
    double longestSamples = 1.0;
    for (const Master& master : masters_)
        longestSamples = std::max (longestSamples, 0.5 * sampleRateHz / master.frequencyHz);

    const int bits = std::min (sampleBits, halfPeriodBits - 1 - static_cast<int> (std::log2 (longestSamples)));
    TimeBase base { std::int64_t { 1 } << bits, std::vector<std::int64_t> (masters_.size()) };

    for (std::size_t pitchClass = 0; pitchClass < 12; ++pitchClass)
    {
        // The half period of the octave chain is a multiple of what its mutations divide it by.
        const Master& octave = masters_[pitchClass];
        std::int64_t multiple = 1;
        for (std::size_t chain = pitchClass; chain < masters_.size(); chain += 12)
        {
            const int above = std::max (0, (masters_[chain].topKey - octave.topKey) / 12);
            multiple = commonMultiple (multiple, std::int64_t { masters_[chain].oddNumerator } << above);
        }

        const double halfPeriod = std::ldexp (0.5 * sampleRateHz / octave.frequencyHz, bits);
        const std::int64_t parts =
            std::max<std::int64_t> (1, std::llround (halfPeriod / static_cast<double> (multiple)));

        for (std::size_t chain = pitchClass; chain < masters_.size(); chain += 12)
        {
            const Master& master = masters_[chain];
            const int above = std::max (0, (master.topKey - octave.topKey) / 12);
            const int below = std::max (0, (octave.topKey - master.topKey) / 12);
            base.halfPeriodUnits[chain] = (parts * (multiple / (master.oddNumerator << above)) * master.oddDenominator)
                                          << below;
        }
    }

    return base;
}

} // namespace stopwright
