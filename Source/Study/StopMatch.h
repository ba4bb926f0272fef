// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/LevelChange.h"
#include "Study/RailStudy.h"

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// Which level the stop is matched to.
enum class MatchAgainst
{
    finished, ///< the reference as it is once the resistor is in: it may load the reference too
    today     ///< the reference as it is with the mixing resistor of now
};

enum class LevelMeasure
{
    rms,
    aWeighted
};

/// What is wished for: the stop so many dB above the reference at these keys; several are met in the least-squares sense.
struct MatchWish
{
    double offsetDb = 0.0;
    LevelMeasure measure = LevelMeasure::rms;
    MatchAgainst against = MatchAgainst::finished;
    std::vector<int> keys;
};

/// What a mixing resistor gives of a wish. dB, over the keys at which both stops sound.
struct MatchStep
{
    double meanDb = 0.0;      ///< of the stop re the reference
    double errorDb = 0.0;     ///< meanDb less what was wished
    double deviationDb = 0.0; ///< rms of what each key lacks of the wish
};

/// Why no mixing resistor that is sold gives a wish.
enum class MatchMiss
{
    none,    ///< one does
    silent,  ///< at none of its keys both stops sound
    tooSoft, ///< the smallest resistor leaves the stop below the wish
    tooLoud  ///< the largest leaves it above
};

/// The mixing resistor that gives a wish, or why there is none.
struct MatchedOhms
{
    std::optional<double> ohms;
    MatchMiss miss = MatchMiss::none;
};

/// How the mixing resistor moves another stop of the bus.
struct NeighbourShift
{
    std::size_t stop = 0;
    LevelChange fromToday;   ///< the stop drawn with the new resistor, re drawn with the one of now
    LevelChange fromWithout; ///< re the rail without the stop
};

/// Two stops of a rail, each drawn with the rest of the rail as it stands, over the keys they have in common, and what
/// the mixing resistor of the first makes of the step between them. Every answer is solved on the networks, with what the
/// resistor does to the bus and to the stop's own network.
/// Threading: [control], one thread at a time. `study` must outlive it.
class StopMatch
{
public:
    /// Fails: Error when their divisions have no key in common.
    StopMatch (const RailStudy& study, std::size_t stop, std::size_t reference, const RailState& state);

    const std::vector<int>& keys() const noexcept { return keys_; }

    double presentOhms() const noexcept { return state_.mixingOhms[stop_]; }

    /// Range: a key of keys(), mixingOhms > 0.
    TonePower stopPower (int key, double mixingOhms) const;
    TonePower referencePower (int key, double mixingOhms, MatchAgainst against) const;

    /// NaN where one of them is silent.
    double differenceDb (int key, double mixingOhms, LevelMeasure measure, MatchAgainst against) const;

    /// Fails: Error when at none of the keys both sound.
    MatchStep step (const MatchWish& wish, double mixingOhms) const;

    /// Fails: Error in a sentence when no mixing resistor gives it, a key is not one of keys(), none of them sounds, or the
    /// stop is on no mixing bus.
    double solve (const MatchWish& wish) const;

    /// The same without a sentence. Range: keys of keys(), the stop on a mixing bus.
    MatchedOhms find (const MatchWish& wish) const;

    /// The same for one key alone.
    MatchedOhms findAt (int key, const MatchWish& wish) const;

    /// What each other stop of its bus feels, in the instrument's order.
    std::vector<NeighbourShift> shifts (double mixingOhms) const;

private:
    std::size_t indexOf (int key) const;
    std::vector<int> soundingKeys (const MatchWish& wish) const;
    MatchMiss missOf (const MatchWish& wish) const;
    std::string outOfReach (const MatchWish& wish) const;

    const RailStudy& study_;
    std::size_t stop_;
    std::size_t reference_;
    RailState state_;
    std::vector<int> keys_;
    std::optional<BusSurroundings> aroundStop_, aroundReference_;
    std::optional<StopOnBus> stopTone_, referenceTone_;
};

} // namespace stopwright
