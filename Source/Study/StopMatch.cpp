// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/StopMatch.h"

#include "Study/ResistorSearch.h"
#include "Study/StopEffect.h"
#include "Units/Decibels.h"
#include "Units/Engineering.h"
#include "Units/Error.h"
#include "Units/Pitch.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace stopwright
{

namespace
{

double measured (const TonePower& power, LevelMeasure measure) noexcept
{
    return measure == LevelMeasure::rms ? power.plain : power.aWeighted;
}

[[noreturn]] void refuseSilence()
{
    throw Error ("Of these keys none sounds with both stops; choose keys at which both have a generator.");
}

std::string decibelText (double db)
{
    std::array<char, 40> text {};
    std::snprintf (text.data(), text.size(), "%+.2f dB", db);
    return text.data();
}

} // namespace

StopMatch::StopMatch (const RailStudy& study, std::size_t stop, std::size_t reference, const RailState& state)
    : study_ (study),
      stop_ (stop),
      reference_ (reference),
      state_ (state)
{
    std::ranges::set_intersection (compassOf (study, stop), compassOf (study, reference), std::back_inserter (keys_));
    if (keys_.empty())
        throw Error ("The divisions of " + quotedText (study.instrument().stops[stop].name) + " and "
                     + quotedText (study.instrument().stops[reference].name)
                     + " have no key in common; choose a reference of the same compass.");
    const auto bus = study.busOf (stop);
    const auto referenceBus = study.busOf (reference);
    if (bus)
        aroundStop_.emplace (study, *bus, state, stop);
    if (referenceBus && referenceBus != bus)
        aroundReference_.emplace (study, *referenceBus, state, std::nullopt);
    stopTone_.emplace (study, stop, state, bus ? &*aroundStop_ : nullptr, keys_);
    const BusSurroundings* const around =
        ! referenceBus ? nullptr : (referenceBus == bus ? &*aroundStop_ : &*aroundReference_);
    if (reference != stop)
        referenceTone_.emplace (study, reference, state, around, keys_);
}

std::size_t StopMatch::indexOf (int key) const
{
    const auto found = std::ranges::lower_bound (keys_, key);
    if (found == keys_.end() || *found != key)
        throw Error (keyName (key) + " is not on the keyboards of both stops, which share " + keyName (keys_.front())
                     + " to " + keyName (keys_.back()) + "; choose keys among these.");
    return static_cast<std::size_t> (found - keys_.begin());
}

TonePower StopMatch::stopPower (int key, double mixingOhms) const
{
    return stopTone_->power (indexOf (key), mixingOhms);
}

TonePower StopMatch::referencePower (int key, double mixingOhms, MatchAgainst against) const
{
    if (! referenceTone_)
        return stopPower (key, presentOhms());
    const double ohms = against == MatchAgainst::today ? presentOhms() : mixingOhms;
    const bool isShared = study_.busOf (reference_) == study_.busOf (stop_);
    const LeftOutStand stand { isShared ? state_.stands[stop_] : StopStand::open, ohms };
    return referenceTone_->power (indexOf (key), state_.mixingOhms[reference_], stand);
}

double StopMatch::differenceDb (int key, double mixingOhms, LevelMeasure measure, MatchAgainst against) const
{
    const double stop = measured (stopPower (key, mixingOhms), measure);
    const double reference = measured (referencePower (key, mixingOhms, against), measure);
    if (! (stop > 0.0 && reference > 0.0))
        return std::nan ("");
    return toDecibels (std::sqrt (stop / reference));
}

std::vector<int> StopMatch::soundingKeys (const MatchWish& wish) const
{
    std::vector<int> sounding;
    sounding.reserve (wish.keys.size());
    for (const int key : wish.keys)
        if (! std::isnan (differenceDb (key, presentOhms(), wish.measure, wish.against)))
            sounding.push_back (key);
    return sounding;
}

MatchStep StopMatch::step (const MatchWish& wish, double mixingOhms) const
{
    MatchStep step;
    const auto sounding = soundingKeys (wish);
    if (sounding.empty())
        refuseSilence();
    const auto count = static_cast<double> (sounding.size());
    for (const int key : sounding)
    {
        const double db = differenceDb (key, mixingOhms, wish.measure, wish.against);
        step.meanDb += db / count;
        step.deviationDb += (db - wish.offsetDb) * (db - wish.offsetDb) / count;
    }
    step.errorDb = step.meanDb - wish.offsetDb;
    step.deviationDb = std::sqrt (step.deviationDb);
    return step;
}

MatchedOhms StopMatch::findAt (int key, const MatchWish& wish) const
{
    MatchWish one = wish;
    one.keys = { key };
    return find (one);
}

MatchedOhms StopMatch::find (const MatchWish& wish) const
{
    MatchWish sounding = wish;
    sounding.keys = soundingKeys (wish);
    if (sounding.keys.empty())
        return { {}, MatchMiss::silent };
    const auto lackingDb = [&] (int key, double ohms)
    { return differenceDb (key, ohms, wish.measure, wish.against) - wish.offsetDb; };
    const auto cost = [&] (double ohms)
    {
        double sum = 0.0;
        for (const int key : sounding.keys)
            sum += lackingDb (key, ohms) * lackingDb (key, ohms);
        return sum;
    };
    const auto ohms = sounding.keys.size() == 1
                          ? resistorWhereZero ([&] (double value) { return lackingDb (sounding.keys.front(), value); })
                          : resistorWhereLeast (cost);
    return { ohms, ohms ? MatchMiss::none : missOf (sounding) };
}

double StopMatch::solve (const MatchWish& wish) const
{
    if (! study_.busOf (stop_))
        throw Error (quotedText (study_.instrument().stops[stop_].name)
                     + " is on no mixing bus, so that no mixing resistor sets its level; give it a bus first.");
    const auto found = find (wish);
    if (found.miss == MatchMiss::silent)
        refuseSilence();
    if (! found.ohms)
        throw Error (outOfReach (wish));
    return *found.ohms;
}

MatchMiss StopMatch::missOf (const MatchWish& wish) const
{
    const double most = step (wish, lowestSoldOhms).meanDb;
    const double least = step (wish, highestSoldOhms).meanDb;
    return wish.offsetDb > 0.5 * (most + least) ? MatchMiss::tooSoft : MatchMiss::tooLoud;
}

std::string StopMatch::outOfReach (const MatchWish& wish) const
{
    const auto stop = quotedText (study_.instrument().stops[stop_].name);
    const auto reference = quotedText (study_.instrument().stops[reference_].name);
    const std::string wished = "No mixing resistor that is sold brings " + stop + " to " + decibelText (wish.offsetDb)
                               + " re " + reference + ": with ";
    const auto ohms = [] (double value)
    { return formatForReading (value, Quantity::resistance) + " (common practice, no source), it "; };
    if (missOf (wish) == MatchMiss::tooSoft)
        return wished + "the smallest, " + ohms (lowestSoldOhms) + "comes to "
               + decibelText (step (wish, lowestSoldOhms).meanDb)
               + "; let its network lose less, take a larger wave, or enlarge the resistors of the others.";
    return wished + "the largest, " + ohms (highestSoldOhms) + "is still at "
           + decibelText (step (wish, highestSoldOhms).meanDb) + "; let its network lose more.";
}

std::vector<NeighbourShift> StopMatch::shifts (double mixingOhms) const
{
    std::vector<NeighbourShift> shifts;
    const auto bus = study_.busOf (stop_);
    for (std::size_t other = 0; bus && other < state_.stands.size(); ++other)
    {
        if (other == stop_ || study_.busOf (other) != bus)
            continue;
        const auto compass = compassOf (study_, other);
        const StopOnBus tone (study_, other, state_, &*aroundStop_, compass);
        const LeftOutStand drawn { StopStand::drawn, mixingOhms };
        const LeftOutStand today { StopStand::drawn, presentOhms() };
        const double ohms = state_.mixingOhms[other];
        shifts.push_back (
            { other, levelChange (tone, compass, ohms, today, drawn), levelChange (tone, compass, ohms, {}, drawn) });
    }
    return shifts;
}

} // namespace stopwright
