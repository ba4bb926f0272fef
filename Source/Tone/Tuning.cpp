// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/Tuning.h"

#include "Units/Error.h"
#include "Units/Pitch.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <string>

namespace stopwright
{

namespace
{

constexpr int keysPerOctave = 12;

int pitchClassOf (int key) noexcept
{
    return (key % keysPerOctave + keysPerOctave) % keysPerOctave;
}

/// 8 / footage as 2^octaves times a ratio of odd numbers.
struct OddRatio
{
    int octaves = 0;
    std::int64_t numerator = 1;
    std::int64_t denominator = 1;
};

OddRatio oddRatioOf (const Footage& footage) noexcept
{
    OddRatio ratio { 3, footage.denominator(), footage.numerator() };

    for (; ratio.numerator % 2 == 0 && ratio.numerator != 0; ratio.numerator /= 2)
        ++ratio.octaves;

    for (; ratio.denominator % 2 == 0 && ratio.denominator != 0; ratio.denominator /= 2)
        --ratio.octaves;

    const std::int64_t common = std::gcd (ratio.numerator, ratio.denominator);
    ratio.numerator /= common;
    ratio.denominator /= common;
    return ratio;
}

void requireRange (const char* what, double value, double lowest, double highest)
{
    if (! (value >= lowest && value <= highest))
        throw Error (std::string (what) + " must be between " + std::to_string (lowest) + " and "
                     + std::to_string (highest) + ", not " + std::to_string (value) + ".");
}

/// The highest key of a pitch class at or below a key.
int highestOfClass (int pitchClass, int highestKey) noexcept
{
    return highestKey - pitchClassOf (highestKey - pitchClass);
}

} // namespace

Tuning Tuning::equalTempered (double referenceHz,
                              double highestHz,
                              MutationSource mutationSource,
                              const std::vector<Footage>& footages,
                              TopBehaviour top)
{
    requireRange ("The reference pitch of A4 in hertz", referenceHz, 200.0, 1000.0);
    requireRange ("The frequency of the highest generator in hertz", highestHz, 100.0, 100000.0);

    Tuning tuning;
    tuning.top_ = top;
    tuning.mutationSource_ = mutationSource;
    tuning.addTemperedChains (referenceHz, highestHz, 1, 1);

    if (mutationSource == MutationSource::exact)
        tuning.addMutations (referenceHz, highestHz, footages);

    return tuning;
}

Tuning Tuning::topOctave (double clockHz,
                          const std::array<int, 12>& divisors,
                          int octave,
                          int highestKey,
                          TopBehaviour top)
{
    requireRange ("The clock of a top octave in hertz", clockHz, 1.0e4, 1.0e9);
    requireRange ("The octave of the divisors", octave, 0, 10);

    const int lowestDivided = keysPerOctave * (octave + 1);
    requireRange ("The key of the highest generator", highestKey, lowestDivided - 12, lowestDivided + 23);

    Tuning tuning;
    tuning.top_ = top;
    tuning.mutationSource_ = MutationSource::borrowed;
    tuning.clockHz_ = clockHz;

    for (int pitchClass = 0; pitchClass < keysPerOctave; ++pitchClass)
    {
        Master master;
        master.divisor = divisors[static_cast<std::size_t> (pitchClass)];
        requireRange ("A divisor of a top octave", master.divisor, 2, 65535);
        master.topKey = highestOfClass (pitchClass, highestKey);
        master.octavesAboveDivided = (master.topKey - lowestDivided - pitchClass) / keysPerOctave;
        master.frequencyHz = std::ldexp (clockHz / master.divisor, master.octavesAboveDivided);
        tuning.masters_.push_back (master);
    }

    return tuning;
}

void Tuning::addTemperedChains (double referenceHz,
                                double highestHz,
                                std::int64_t oddNumerator,
                                std::int64_t oddDenominator)
{
    const double ratio = static_cast<double> (oddNumerator) / static_cast<double> (oddDenominator);
    const double highestKey = 69.0 + 12.0 * std::log2 (highestHz / (referenceHz * ratio));

    for (int pitchClass = 0; pitchClass < keysPerOctave; ++pitchClass)
    {
        Master master;
        master.topKey = highestOfClass (pitchClass, static_cast<int> (std::floor (highestKey + 1.0e-9)));
        master.frequencyHz = equalTemperedHz (master.topKey, referenceHz) * ratio;
        master.oddNumerator = oddNumerator;
        master.oddDenominator = oddDenominator;
        masters_.push_back (master);
    }
}

void Tuning::addMutations (double referenceHz, double highestHz, const std::vector<Footage>& footages)
{
    for (const Footage& footage : footages)
    {
        const OddRatio ratio = oddRatioOf (footage);
        const auto same = [&ratio] (const Master& master)
        { return master.oddNumerator == ratio.numerator && master.oddDenominator == ratio.denominator; };

        if (std::none_of (masters_.begin(), masters_.end(), same))
            addTemperedChains (referenceHz, highestHz, ratio.numerator, ratio.denominator);
    }
}

int Tuning::chainCount() const noexcept
{
    return static_cast<int> (masters_.size());
}

std::optional<Generator> Tuning::inChain (int chain, int key) const noexcept
{
    const int octavesBelow = (masters_[static_cast<std::size_t> (chain)].topKey - key) / keysPerOctave;

    if (octavesBelow >= octavesPerChain || (octavesBelow < 0 && top_ == TopBehaviour::silent))
        return std::nullopt;

    return Generator { chain, std::max (octavesBelow, 0) };
}

std::optional<Generator> Tuning::generatorFor (int key, const Footage& footage) const noexcept
{
    const OddRatio ratio = oddRatioOf (footage);
    const int octaveKey = key + keysPerOctave * ratio.octaves;

    for (std::size_t first = 0; first < masters_.size(); first += keysPerOctave)
        if (masters_[first].oddNumerator == ratio.numerator && masters_[first].oddDenominator == ratio.denominator)
            return inChain (static_cast<int> (first) + pitchClassOf (key), octaveKey);

    const double semitones = 12.0 * std::log2 (footage.harmonicOfEightFoot());
    const int borrowedKey = key + static_cast<int> (std::lround (semitones));
    return inChain (pitchClassOf (borrowedKey), borrowedKey);
}

std::optional<Generator> Tuning::octavesAbove (Generator generator, int octaves) const noexcept
{
    const int octavesBelow = generator.octavesBelowTop - octaves;

    if (octavesBelow >= octavesPerChain || (octavesBelow < 0 && top_ == TopBehaviour::silent))
        return std::nullopt;

    return Generator { generator.chain, std::max (octavesBelow, 0) };
}

double Tuning::frequencyHz (Generator generator) const noexcept
{
    return std::ldexp (masters_[static_cast<std::size_t> (generator.chain)].frequencyHz, -generator.octavesBelowTop);
}

double Tuning::keyHz (int key) const noexcept
{
    const Master& master = masters_[static_cast<std::size_t> (pitchClassOf (key))];
    return std::ldexp (master.frequencyHz, (key - master.topKey) / keysPerOctave);
}

} // namespace stopwright
