// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Units/Footage.h"

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

namespace stopwright
{

/// What a rank does above the highest generator there is.
enum class TopBehaviour
{
    silent,
    breakBack ///< sounds the same pitch class as many octaves lower as needed
};

/// Where a footage that is not an octave of 8 ft takes its pitch from.
enum class MutationSource
{
    exact,   ///< generators of its own at exactly 8/footage times the key's pitch
    borrowed ///< the nearest generator of the tempered scale, as divider instruments do
};

/// One free-running generator: a chain (a master and its binary dividers) and how many octaves it lies below the
/// chain's master.
struct Generator
{
    int chain = 0;
    int octavesBelowTop = 0;

    bool operator== (const Generator&) const = default;
};

/// The masters of an instrument, their binary dividers, and which generator a key sounds at a footage.
///
/// A master's half period is a whole number of time units and so is a sample, so that phases stay exact for ever.
/// Threading: construct on [control]; immutable, the noexcept functions on [any].
class Tuning
{
public:
    static constexpr int octavesPerChain = 11;

    /// Twelve equal-tempered masters and their dividers. Generators above highestHz do not exist. `footages` lists the
    /// footages in use: a mutation among them gets generators of its own when MutationSource::exact, one that is not
    /// listed is borrowed. Range: referenceHz 200 .. 1000 (A4), highestHz 100 .. 100000. Fails: Error out of range.
    static Tuning equalTempered (double referenceHz,
                                 double highestHz,
                                 MutationSource mutationSource = MutationSource::exact,
                                 const std::vector<Footage>& footages = {},
                                 TopBehaviour top = TopBehaviour::silent);

    /// Twelve masters made by whole-number division of one clock. divisors[0] belongs to C of the octave
    /// `octave` (C8 = octave 8) and so on to B; highestKey is the key number of the highest generator (an additional
    /// C above the octave divides as half its lower octave's divisor: 478 -> 239). Mutations are borrowed.
    /// Every generator is an exact 50 % square, the undivided ones too: an odd divisor counts half ticks of the clock.
    /// Range: clockHz 1e4 .. 1e9, divisors 2 .. 65535, octave 0 .. 10, highestKey from an octave below C of `octave` to
    /// an octave above its B. Fails: Error out of range.
    static Tuning topOctave (double clockHz,
                             const std::array<int, 12>& divisors,
                             int octave,
                             int highestKey,
                             TopBehaviour top = TopBehaviour::silent);

    int chainCount() const noexcept;

    /// The generator key `key` (MIDI number, any) sounds at `footage`, or none (silent at the top, or too low).
    std::optional<Generator> generatorFor (int key, const Footage& footage) const noexcept;

    /// The generator `octaves` above `generator` within its chain, with the top behaviour applied, or none.
    std::optional<Generator> octavesAbove (Generator generator, int octaves) const noexcept;

    double frequencyHz (Generator generator) const noexcept;

    /// Frequency of the key's 8 ft pitch, whether or not a generator exists for it: harmonics are counted from it.
    double keyHz (int key) const noexcept;

    /// Time in whole units at a sample rate: length of one sample, and of a half period of a chain's master.
    /// Exact for clocked masters when clock and rate are whole millihertz; else rounded, within 1e-12 relative when
    /// mutations have no odd factors but 3, 5, 7 and 9. An exact mutation is an exact multiple of its octave chain.
    /// All half periods are below 2^50 units and a sample is at most 2^46 units, so times within a block fit 64 bits.
    struct TimeBase
    {
        std::int64_t unitsPerSample = 0;
        std::vector<std::int64_t> halfPeriodUnits; ///< per chain
    };

    TimeBase timeBase (double sampleRateHz) const;

private:
    /// One chain: its master sounds keyHz (topKey) times oddNumerator / oddDenominator.
    struct Master
    {
        double frequencyHz = 0.0;
        int topKey = 0; ///< the key whose 8 ft pitch (times the odd ratio) is the master's
        int divisor = 0;
        int octavesAboveDivided = 0; ///< of the master above clock / divisor
        std::int64_t oddNumerator = 1;
        std::int64_t oddDenominator = 1;
    };

    Tuning() = default;
    void addTemperedChains (double referenceHz,
                            double highestHz,
                            std::int64_t oddNumerator,
                            std::int64_t oddDenominator);
    void addMutations (double referenceHz, double highestHz, const std::vector<Footage>& footages);
    std::optional<Generator> inChain (int chain, int key) const noexcept;
    TimeBase wholeTimeBase (std::int64_t clockMilliHz, std::int64_t rateMilliHz) const;
    TimeBase roundedTimeBase (double sampleRateHz) const;

    std::vector<Master> masters_; ///< the twelve pitch classes from C, then twelve more for each odd ratio
    double clockHz_ = 0.0;        ///< 0 when equal-tempered
    TopBehaviour top_ = TopBehaviour::silent;
    MutationSource mutationSource_ = MutationSource::exact;
};

} // namespace stopwright
