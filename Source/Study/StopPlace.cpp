// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/StopPlace.h"

#include "Study/StopEffect.h"
#include "Study/StopMatch.h"
#include "Units/Error.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

std::optional<double> differenceOf (const StopMatch& match, LevelMeasure measure)
{
    MatchWish wish;
    wish.keys = match.keys();
    wish.measure = measure;
    const double meanDb = match.step (wish, match.presentOhms()).meanDb;
    return std::isfinite (meanDb) ? std::optional (meanDb) : std::nullopt;
}

void addDifference (StopPlace& place, const RailStudy& study, std::size_t stop, std::size_t reference)
{
    if (stop == reference || ! study.hasCard (reference))
        return;
    const StopMatch match (study, stop, reference, study.asOpened());
    place.rmsDb = differenceOf (match, LevelMeasure::rms);
    place.weightedDb = differenceOf (match, LevelMeasure::aWeighted);
}

} // namespace

StopPlace stopPlaceOf (const Instrument& instrument,
                       const InstrumentCards& cards,
                       std::size_t stop,
                       std::optional<std::size_t> reference)
{
    StopPlace place;
    try
    {
        const RailStudy study (instrument, cards);
        if (! study.hasCard (stop) || ! study.busOf (stop))
            throw Error ("On no mixing bus: put it on one to hear it.");
        for (const auto& change : changesByStop (study, stop, study.asOpened()))
            if (change.isOnTheSameBus)
                place.effects.push_back ({ instrument.stops[change.stop].name, change.whenDrawn.compassDb });
        std::ranges::stable_sort (place.effects, std::ranges::greater(),
                                  [] (const StopPlace::Effect& effect) { return std::abs (effect.compassDb); });
        if (reference)
            addDifference (place, study, stop, *reference);
    }
    catch (const Error& error)
    {
        place.refusal = error.what();
    }
    return place;
}

} // namespace stopwright
