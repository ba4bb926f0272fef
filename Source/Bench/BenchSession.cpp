// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchSession.h"

#include "Bench/CardDifference.h"
#include "Bench/KnobScale.h"
#include "Organ/CardDocument.h"
#include "Units/Error.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

/// An instrument without a drawn tablet would open silent.
void drawSomething (BenchDocument& document)
{
    if (document.stopInHand() == nullptr
        || std::ranges::any_of (document.instrument->stops, [] (const StopTablet& stop) { return stop.drawn; }))
        return;
    document.instrument->stops[static_cast<std::size_t> (document.stopIndex)].drawn = true;
}

} // namespace

BenchSession::BenchSession (BenchProcessor& processor)
    : processor_ (processor),
      keySource_ (keySourceForCardAlone (Card {}))
{}

void BenchSession::take (BenchDocument document)
{
    const auto keySource = document.keySource();
    auto cards = cardsThatSound (document);
    drawSomething (document);
    play (document, cards, true);

    document_ = std::move (document);
    cards_ = std::move (cards);
    const auto* const stop = document_.stopInHand();
    referenceName_ = stop != nullptr ? stop->name : document_.card.name;
    savedCard_ = document_.card;
    keySource_ = keySource;
    history_.clear();
    gestureOpen_ = false;
    isOpen_ = true;
    notify (Change::document);
}

void BenchSession::open (const std::filesystem::path& file)
{
    take (BenchDocument::open (file));
}

void BenchSession::chooseStop (int index)
{
    auto document = document_.withStop (index);
    const auto keySource = document.keySource();
    auto cards = cards_;
    cards.ofStops[static_cast<std::size_t> (index)] = document.card;
    play (document, cards, false);

    document_ = std::move (document);
    cards_ = std::move (cards);
    savedCard_ = document_.card;
    keySource_ = keySource;
    history_.clear();
    gestureOpen_ = false;
    notify (Change::stop);
}

void BenchSession::save()
{
    if (document_.cardFile.empty())
        throw Error ("This card has no file yet; use \"Save as\" and give it a name.");
    if (document_.isCardUnsaved())
        saveCard();
    if (document_.isMixingUnsaved())
        saveMixing();
    notify (Change::saved);
}

void BenchSession::saveCard()
{
    if (auto changed = document_.changedFileText(); changed && changed != forgoneText_)
    {
        forgoneText_ = std::move (changed);
        throw Error (
            document_.cardFile.filename().string()
            + " was changed by another program since it was opened here. To keep both, use \"Save as\"; to replace "
              "what the other one wrote, save again.");
    }
    writeCard (document_.card, document_.cardFile);
    document_.noteCardSaved();
    savedCard_ = document_.card;
    forgoneText_.reset();
    shareSavedCard();
}

void BenchSession::saveAs (const std::filesystem::path& file)
{
    writeCard (document_.card, file);

    // A copy of a stop's card is a card of its own: saving it again must not touch the instrument's.
    document_.cardFile = file;
    document_.noteCardSaved();
    savedCard_ = document_.card;
    notify (Change::saved);
}

void BenchSession::playDifference (const Card& from, const BenchDocument& to)
{
    // A network that ran away keeps its fault while its values are turned; a fresh one does not have it.
    const auto moves = knobMovesBetween (from, to.card);
    if (! moves || processor_.engine().isSilencedByFault())
    {
        play (to, cards_, false);
        return;
    }

    for (const auto& move : *moves)
    {
        const bool isTurned = move.knob.place == CardKnob::Place::tapLevel
                                  ? processor_.turnTapLevel (move.knob.name, move.value, to.card)
                                  : processor_.turn (move.knob.partKnob(), move.value, to.card);
        if (! isTurned)
        {
            play (to, cards_, false);
            return;
        }
    }
}

void BenchSession::change (const StopWork& to)
{
    auto changed = document_;
    changed.card = to.card;
    changed.setMixingOhms (to.mixingOhms);
    playDifference (document_.card, changed);
    if (const auto* const stop = changed.stopInHand(); stop != nullptr && to.mixingOhms != document_.mixingOhms())
        processor_.engine().turnMixing (stop->name, to.mixingOhms);
    document_ = std::move (changed);
}

double BenchSession::value (const CardKnob& knob) const
{
    return knob.place == CardKnob::Place::mixing ? document_.mixingOhms() : valueOf (document_.card, knob);
}

double BenchSession::savedValue (const CardKnob& knob) const
{
    return knob.place == CardKnob::Place::mixing ? document_.savedMixingOhms : valueOf (savedCard_, knob);
}

void BenchSession::turn (const CardKnob& knob, double value, const std::string& mergeKey)
{
    const auto before = work();
    auto after = before;
    const double inRange = rangeOf (before.card, knob).clamp (value);
    if (knob.place == CardKnob::Place::mixing)
        after.mixingOhms = inRange;
    else
        setValueOf (after.card, knob, inRange);
    if (inRange == this->value (knob))
        return;

    const auto what = knob.name + (knob.place == CardKnob::Place::mixing ? " mixing" : "") + " to "
                      + KnobScale (before.card, knob, Series::e12).textOf (inRange);
    change (after);
    if (gestureOpen_)
        gestureName_ = what;
    else
        history_.add (before, after, what, mergeKey);
    notify (Change::values);
}

void BenchSession::beginGesture()
{
    gestureOpen_ = true;
    gestureStart_ = work();
    gestureName_.clear();
}

void BenchSession::endGesture()
{
    if (! std::exchange (gestureOpen_, false) || gestureName_.empty())
        return;
    if (cardText (gestureStart_.card) != cardText (document_.card)
        || gestureStart_.mixingOhms != document_.mixingOhms())
        history_.add (gestureStart_, work(), gestureName_);
    notify (Change::values);
}

void BenchSession::setSwitch (const std::string& name, bool closed)
{
    const auto before = work();
    auto after = before;
    for (auto& part : after.card.parts)
    {
        if (auto* contact = std::get_if<Switch> (&part.value); contact != nullptr && part.name == name)
            contact->closed = closed;
    }
    if (cardText (before.card) == cardText (after.card))
        return;
    change (after);
    history_.add (before, after, name + (closed ? " closed" : " opened"));
    notify (Change::values);
}

void BenchSession::undo()
{
    endGesture();
    if (! history_.canUndo())
        return;
    change (StopWork (history_.undo()));
    notify (Change::values);
}

void BenchSession::redo()
{
    endGesture();
    if (! history_.canRedo())
        return;
    change (StopWork (history_.redo()));
    notify (Change::values);
}

void BenchSession::addListener (Listener& listener)
{
    listeners_.push_back (&listener);
}

void BenchSession::removeListener (Listener& listener)
{
    std::erase (listeners_, &listener);
}

void BenchSession::tellEach (const std::function<void (Listener&)>& tell)
{
    const auto listeners = listeners_; // one may leave while it is told
    for (auto* listener : listeners)
    {
        if (std::find (listeners_.begin(), listeners_.end(), listener) != listeners_.end())
            tell (*listener);
    }
}

void BenchSession::notify (Change change)
{
    tellEach ([&] (Listener& listener) { listener.sessionChanged (change); });
}

void BenchSession::say (const std::string& sentence)
{
    tellEach ([&] (Listener& listener) { listener.sessionSays (sentence); });
}

bool BenchSession::attempt (const std::function<void()>& action)
{
    try
    {
        action();
        return true;
    }
    catch (const std::exception& error)
    {
        say (error.what());
        return false;
    }
}

} // namespace stopwright
