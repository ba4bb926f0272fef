// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchSession.h"

#include "Bench/CardDifference.h"
#include "Bench/InstrumentKnob.h"
#include "Bench/KnobScale.h"
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

const Instrument& orNone (const std::optional<Instrument>& instrument)
{
    static const Instrument none;
    return instrument ? *instrument : none;
}

/// A step of the history, with the cards that have been taken in hand since it was noted.
BenchWork mergedWithPresent (BenchWork step, const BenchWork& present)
{
    step.trials.insert (present.trials.begin(), present.trials.end());
    return step;
}

} // namespace

BenchSession::BenchSession (BenchProcessor& processor)
    : processor_ (processor),
      player_ (processor),
      keySource_ (keySourceForCardAlone (Card {}))
{}

void BenchSession::open (const std::filesystem::path& file)
{
    auto document = BenchDocument::open (file);
    drawSomething (document);
    player_.open (document);

    document_ = std::move (document);
    keySource_ = document_.keySource();
    history_.clear();
    forgoneTexts_.clear();
    gestureOpen_ = false;
    isOpen_ = true;
    notify (Change::document);
}

void BenchSession::chooseStop (int index)
{
    endGesture();
    auto document = document_;
    document.takeStop (index);
    player_.follow (document);

    document_ = std::move (document);
    keySource_ = document_.keySource();
    notify (Change::stop);
}

/// Has document and sound become `to`, but for what is drawn. Fails: Error; both stay as they were.
void BenchSession::apply (const BenchWork& to)
{
    auto document = document_;
    document.setWork (to);
    document.takeRegistrationOf (document_);
    document.readMissingCard (document.cardName());
    player_.follow (document);
    document_ = std::move (document);
    keySource_ = document_.keySource();
}

/// The same, refusing to leave a network that can be computed for one that cannot.
void BenchSession::applySound (const BenchWork& to)
{
    const bool wasUnsound = isUnsound();
    const BenchWork before = document_.work();
    apply (to);
    if (wasUnsound || ! isUnsound())
        return;
    const auto sentence = faults().front().sentence;
    apply (before);
    throw Error (sentence);
}

void BenchSession::note (const BenchWork& before, const std::string& what, const std::string& mergeKey)
{
    if (gestureOpen_)
        gestureName_ = what;
    else
        history_.add (before, document_, what, mergeKey);
}

void BenchSession::tellDifference (const BenchWork& before, bool wasUnsound)
{
    const bool isOtherCard = before.stopIndex != document_.stopIndex || before.cardName() != document_.cardName();
    if (isOtherCard)
        notify (Change::stop);
    else if (! isSameNetwork (before.card(), document_.card()) || wasUnsound != isUnsound())
        notify (Change::network);
    else
        notify (Change::values);
    if (! isOtherCard && (before.pair().isB != document_.pair().isB || before.pair().b.has_value() != hasTwoTrials()))
        notify (Change::trial);
    if (! isSameInstrument (before.instrument, document_.instrument))
        notify (Change::rail);
}

double BenchSession::value (const CardKnob& knob) const
{
    if (! knob.isInInstrument())
        return valueOf (document_.card(), knob);
    return valueOf (orNone (document_.instrument), knob);
}

double BenchSession::savedValue (const CardKnob& knob) const
{
    if (! knob.isInInstrument())
        return valueOf (document_.savedCard(), knob);
    return valueOf (orNone (document_.savedInstrument), knob);
}

void BenchSession::turn (const CardKnob& knob, double value, const std::string& mergeKey)
{
    const BenchWork before = document_.work();
    BenchWork after = before;
    const double inRange = rangeOf (before.card(), knob).clamp (value);
    if (inRange == this->value (knob))
        return;
    if (knob.isInInstrument())
        after.instrument = withValue (std::move (*after.instrument), knob, inRange);
    else
        setValueOf (after.pair().inHand(), knob, inRange);

    applySound (after);
    note (before, nameInHistory (knob) + " to " + KnobScale (before.card(), knob, Series::e12).textOf (inRange),
          mergeKey);
    notify (knob.isInInstrument() ? Change::rail : Change::values);
}

void BenchSession::beginGesture()
{
    gestureOpen_ = true;
    gestureStart_ = document_.work();
    gestureName_.clear();
}

void BenchSession::endGesture()
{
    if (! std::exchange (gestureOpen_, false) || gestureName_.empty())
        return;
    if (! isSameWork (gestureStart_, document_))
        history_.add (gestureStart_, document_, gestureName_);
    notify (Change::values);
}

void BenchSession::setSwitch (const std::string& name, bool closed)
{
    const BenchWork before = document_.work();
    BenchWork after = before;
    for (auto& part : after.pair().inHand().parts)
    {
        if (auto* contact = std::get_if<Switch> (&part.value); contact != nullptr && part.name == name)
            contact->closed = closed;
    }
    if (isSameWork (before, after))
        return;
    applySound (after);
    note (before, name + (closed ? " closed" : " opened"), {});
    notify (Change::values);
}

void BenchSession::edit (const std::string& what,
                         const std::function<void (BenchWork&)>& change,
                         const std::string& mergeKey)
{
    const BenchWork before = document_.work();
    const bool wasUnsound = isUnsound();
    BenchWork after = before;
    change (after);
    apply (after);
    if (isSameWork (before, document_) && before.stopIndex == document_.stopIndex)
        return;
    note (before, what, mergeKey);
    tellDifference (before, wasUnsound);
}

void BenchSession::editCard (const std::string& what,
                             const std::function<void (Card&)>& change,
                             const std::string& mergeKey)
{
    edit (
        what, [&] (BenchWork& work) { change (work.pair().inHand()); }, mergeKey);
}

void BenchSession::restore (const BenchWork& work)
{
    // What was not in hand yet is read first, so that undo leads back to it.
    for (const auto& [name, pair] : work.trials)
        document_.readMissingCard (name);
    edit ("work taken back", [&] (BenchWork& present) { present = work; });
}

/// Goes to where a step of the history leads.
void BenchSession::goTo (const BenchWork& step)
{
    const BenchWork before = document_.work();
    const bool wasUnsound = isUnsound();
    apply (mergedWithPresent (step, before));
    tellDifference (before, wasUnsound);
}

void BenchSession::undo()
{
    endGesture();
    if (history_.canUndo())
        goTo (history_.undo());
}

void BenchSession::redo()
{
    endGesture();
    if (history_.canRedo())
        goTo (history_.redo());
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
    sentence_ = sentence;
    tellEach ([&] (Listener& listener) { listener.sessionSays (sentence); });
}

void BenchSession::tell (const std::string& sentence)
{
    sentence_ = sentence;
    tellEach ([&] (Listener& listener) { listener.sessionTells (sentence); });
}

void BenchSession::withdraw (const std::string& sentence)
{
    if (! sentence.empty() && sentence == sentence_)
        say ({});
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
