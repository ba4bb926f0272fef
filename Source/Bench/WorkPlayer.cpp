// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/WorkPlayer.h"

#include "Units/Error.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

/// Plays where nothing can: its output rests at common.
Card silentCard()
{
    Card card;
    Tap tap;
    tap.name = "silence";
    tap.voltsPeakToPeak = 1e-3;
    tap.node = "in";
    card.taps.push_back (std::move (tap));
    card.parts.push_back ({ "R1", { "in", "0" }, Resistor { 10e3 }, 0.0 });
    card.parts.push_back ({ "R2", { "out", "0" }, Resistor { 10e3 }, 0.0 });
    card.output = "out";
    return card;
}

bool hasError (const std::vector<Finding>& findings)
{
    return ! findings.empty() && findings.front().severity == Severity::error;
}

/// The cards on disk that can be computed; a sentence about each that cannot.
InstrumentCards soundCardsOnDisk (const BenchDocument& document)
{
    if (! document.instrument)
        return {};
    const auto& stops = document.instrument->stops;
    auto cards = findInstrumentCards (*document.instrument, document.instrumentFile);
    for (std::size_t index = 0; index < stops.size(); ++index)
    {
        if (! cards.ofStops[index])
            continue;
        const auto findings = findFaults (netlistOf (*cards.ofStops[index]));
        if (! hasError (findings))
            continue;
        cards.errors.push_back (stops[index].cardFile + ": " + findings.front().sentence);
        cards.ofStops[index].reset();
    }
    return cards;
}

} // namespace

void WorkPlayer::open (const BenchDocument& document)
{
    WorkPlayer next (processor_);
    next.cards_ = soundCardsOnDisk (document);
    next.judge (document);
    const auto work = next.soundPartOf (document);
    next.play (work, document.keySource(), 0.0);
    next.sounding_ = work;

    cards_ = std::move (next.cards_);
    faults_ = std::move (next.faults_);
    judged_ = std::move (next.judged_);
    sounding_ = std::move (next.sounding_);
    referenceName_ = std::move (next.referenceName_);
    hasReference_ = next.hasReference_;
    gainDb_ = 0.0;
}

void WorkPlayer::follow (const BenchDocument& document)
{
    if (isUnsound (document.cardName()) || ! turnTo (document))
    {
        build (document, gainDb_);
        return;
    }
    sounding_ = document.work();
    judged_.erase (document.cardName());
}

void WorkPlayer::followTrial (const BenchDocument& document, double gainDb, bool alwaysFades)
{
    if (alwaysFades || gainDb != gainDb_)
        build (document, gainDb);
    else
        follow (document);
}

void WorkPlayer::setGainDb (double gainDb)
{
    gainDb_ = gainDb;
    processor_.engine().setTrialGainDb (gainDb);
}

/// Builds the sound of the work anew, with a cross-fade from what sounds.
void WorkPlayer::build (const BenchDocument& document, double gainDb)
{
    judge (document);
    const auto work = soundPartOf (document);
    play (work, document.keySource(), gainDb);
    sounding_ = work;
    gainDb_ = gainDb;
}

void WorkPlayer::judge (const BenchDocument& document)
{
    for (const auto& [name, pair] : document.trials)
    {
        const auto& card = pair.inHand();
        if (const auto judged = judged_.find (name); judged != judged_.end() && judged->second == card)
            continue;
        judged_[name] = card;
        faults_[name] = findFaults (netlistOf (card));
    }
}

/// The work with every card that cannot be computed as it last could; without it where it never could.
BenchWork WorkPlayer::soundPartOf (const BenchDocument& document) const
{
    BenchWork work = document.work();
    for (auto trial = work.trials.begin(); trial != work.trials.end();)
    {
        const auto last = sounding_.trials.find (trial->first);
        if (! isUnsound (trial->first))
            ++trial;
        else if (last == sounding_.trials.end())
            trial = work.trials.erase (trial);
        else
            (trial++)->second = last->second;
    }
    return work;
}

InstrumentCards WorkPlayer::cardsOf (const BenchWork& work) const
{
    auto cards = cards_;
    if (! work.instrument)
        return cards;
    for (std::size_t index = 0; index < cards.ofStops.size() && index < work.instrument->stops.size(); ++index)
        if (const auto trial = work.trials.find (work.instrument->stops[index].cardFile); trial != work.trials.end())
            cards.ofStops[index] = trial->second.inHand();
    return cards;
}

InstrumentCards WorkPlayer::cardsThatSound() const
{
    return soundCardsOf (sounding_);
}

/// As cardsOf, without the cards that cannot be computed and never could.
InstrumentCards WorkPlayer::soundCardsOf (const BenchWork& work) const
{
    auto cards = cardsOf (work);
    for (std::size_t index = 0; index < cards.ofStops.size() && index < work.instrument->stops.size(); ++index)
        if (const auto& file = work.instrument->stops[index].cardFile;
            isUnsound (file) && ! work.trials.contains (file))
            cards.ofStops[index].reset();
    return cards;
}

/// The stop in hand, else the first that can be measured.
std::string WorkPlayer::referenceTablet (const BenchWork& work, const InstrumentCards& cards) const
{
    const auto& stops = work.instrument->stops;
    const auto canSoundAt = [&] (std::size_t index)
    { return index < cards.ofStops.size() && cards.ofStops[index] && hasBus (*work.instrument, stops[index]); };
    if (work.stopIndex >= 0 && canSoundAt (static_cast<std::size_t> (work.stopIndex)))
        return stops[static_cast<std::size_t> (work.stopIndex)].name;
    for (std::size_t index = 0; index < stops.size(); ++index)
        if (canSoundAt (index))
            return stops[index].name;
    return {};
}

void WorkPlayer::playInstrument (const BenchWork& work, double gainDb)
{
    const auto cards = soundCardsOf (work);
    const auto* const inHand = work.stopInHand();
    const auto reference = referenceTablet (work, cards);
    const bool isNewReference = ! hasReference_ && ! reference.empty();
    processor_.playInstrument (*work.instrument, cards, isNewReference || inHand == nullptr ? reference : inHand->name,
                               isNewReference, gainDb);
    if (! isNewReference)
        return;
    referenceName_ = reference;
    hasReference_ = true;
    if (inHand != nullptr && inHand->name != reference)
        processor_.playInstrument (*work.instrument, cards, inHand->name, false, gainDb);
}

void WorkPlayer::play (const BenchWork& work, const KeySource& keySource, double gainDb)
{
    if (work.instrument)
    {
        playInstrument (work, gainDb);
        return;
    }
    const bool isSilent = work.trials.empty();
    const auto card = isSilent ? silentCard() : work.card();
    processor_.playCard (card, keySource, ! isSilent && ! hasReference_, gainDb);
    if (! isSilent && ! std::exchange (hasReference_, true))
        referenceName_ = card.name;
}

const std::vector<Finding>& WorkPlayer::faultsOf (const std::string& cardName) const
{
    static const std::vector<Finding> none;
    const auto found = faults_.find (cardName);
    return found != faults_.end() ? found->second : none;
}

bool WorkPlayer::isUnsound (const std::string& cardName) const
{
    return hasError (faultsOf (cardName));
}

std::string WorkPlayer::openingNote() const
{
    const auto& errors = cards_.errors;
    if (errors.empty())
        return {};
    if (errors.size() == 1)
        return errors.front();
    return errors.front() + " And " + std::to_string (errors.size() - 1) + " more that cannot sound.";
}

bool WorkPlayer::canSound (const BenchDocument& document, int stop) const
{
    const auto index = static_cast<std::size_t> (stop);
    if (! document.instrument || stop < 0 || index >= document.instrument->stops.size())
        return false;
    const auto& tablet = document.instrument->stops[index];
    const bool isOnDisk = index < cards_.ofStops.size() && cards_.ofStops[index] && ! isUnsound (tablet.cardFile);
    return (isOnDisk || sounding_.trials.contains (tablet.cardFile)) && hasBus (*document.instrument, tablet);
}

} // namespace stopwright
