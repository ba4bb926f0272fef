// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ReadingRequest.h"

#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <utility>

namespace stopwright
{

namespace
{

/// A circuit stage without its card: nothing behind it can be told.
void requireStageCards (const Instrument& instrument, const InstrumentCards& cards)
{
    for (std::size_t preamp = 0; preamp < instrument.preamps.size(); ++preamp)
    {
        const auto& stages = instrument.preamps[preamp].stages;
        for (std::size_t stage = 0; stage < stages.size(); ++stage)
            if (stages[stage].kind == StageKind::circuit
                && (preamp >= cards.ofStages.size() || stage >= cards.ofStages[preamp].size()
                    || ! cards.ofStages[preamp][stage]))
                throw Error ("The preamp stage " + quotedText (stages[stage].name) + " has a card that cannot be used: "
                             + stages[stage].cardFile + ". Open that card to read why.");
    }
}

/// What cannot be used is left out instead of refused.
InstrumentCards usableCards (const InstrumentCards& cards)
{
    auto usable = cards;
    usable.errors.clear(); // what cannot sound is silent here as it is in the loudspeaker
    return usable;
}

} // namespace

BenchPoint ReadingRequest::point() const
{
    const auto node = choices.probe.value_or (std::string());
    if (! instrument)
        return BenchPoint::ofCard (card, keySource, node);
    requireStageCards (*instrument, cards);
    return BenchPoint::ofStop (*instrument, usableCards (cards), stop, node);
}

std::optional<ReadingResult> ReadingRequest::read (ReadingResult result, const std::function<bool()>& isUnwanted) const
{
    switch (choices.kind)
    {
        case ReadingKind::harmonics:
            result.reading = harmonicReading (point(), key, choices.mask.get());
            break;
        case ReadingKind::response:
            result.reading = responseReading (point(), key);
            break;
        case ReadingKind::wave:
            result.reading = waveReading (point(), key);
            break;
        case ReadingKind::compass:
            result.reading = compassTable (point(), isUnwanted);
            if (isUnwanted && isUnwanted())
                return {};
            break;
        case ReadingKind::stages:
            if (! instrument)
                throw Error ("A card by itself has no stages behind it; open an instrument to see how near its stages "
                             "come to clipping.");
            requireStageCards (*instrument, cards);
            result.reading = stageReading (*instrument, cards, division, choices.stageKeys, isUnwanted);
            if (isUnwanted && isUnwanted())
                return {};
            break;
    }
    return result;
}

std::optional<ReadingResult> ReadingRequest::compute (const std::function<bool()>& isUnwanted) const
{
    ReadingResult result;
    result.key = key;
    result.place = choices.probe ? "node " + *choices.probe : std::string ("the card's output");
    try
    {
        result.keyHz = keySource.tuning.keyHz (key);
        return read (result, isUnwanted);
    }
    catch (const std::exception& error)
    {
        result.refusal = error.what();
        return result;
    }
}

} // namespace stopwright
