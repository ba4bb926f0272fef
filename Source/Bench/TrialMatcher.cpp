// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/TrialMatcher.h"

#include "Sound/OutletDelays.h"
#include "Units/Error.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

TrialMatcher::TrialMatcher (BenchSession& session, const KeyHands& hands) : session_ (session), hands_ (hands)
{
    session_.addListener (*this);
}

TrialMatcher::~TrialMatcher()
{
    session_.removeListener (*this);
}

void TrialMatcher::sessionChanged (BenchSession::Change change)
{
    using Change = BenchSession::Change;
    // That another trial is in hand, or there is one, is told after what it means for the card in hand.
    if (change == Change::saved || change == Change::trial)
        return;
    // The levels leave out the card in hand, and so hold for any values and network of it.
    if (change != Change::values && change != Change::network)
        levels_.reset();
    held_ = heldKeys();
    match();
}

void TrialMatcher::setMeasure (LevelMeasure measure)
{
    measure_ = measure;
    matchAndTell();
    if (onMeasure)
        onMeasure();
}

void TrialMatcher::setKey (int key)
{
    if (std::exchange (key_, key) != key && held_.empty())
        matchAndTell();
}

void TrialMatcher::followKeys()
{
    if (! session_.hasTwoTrials())
        return;
    auto held = heldKeys();
    if (held == held_)
        return;
    held_ = std::move (held);
    matchAndTell();
}

std::vector<HeldKey> TrialMatcher::heldKeys() const
{
    const auto& document = session_.document();
    const int divisions = document.instrument ? static_cast<int> (document.instrument->divisions.size()) : 1;
    std::vector<HeldKey> held;
    for (int division = 0; division < divisions; ++division)
    {
        const auto channels = document.midiChannels (division);
        const auto name = document.instrument ? document.instrument->divisions[static_cast<std::size_t> (division)].name
                                              : std::string();
        for (int key = document.lowestKey (division); key <= document.highestKey (division); ++key)
            if (hands_.isHeld (division, key) || session_.processor().isMidiKeyDown (key, channels))
                held.push_back ({ name, key });
    }
    return held;
}

TrialComparison TrialMatcher::compareNow()
{
    const auto& document = session_.document();
    const auto& pair = document.pair();
    const auto* const stop = document.stopInHand();
    if (stop == nullptr)
    {
        std::vector<int> keys;
        keys.reserve (held_.size());
        for (const auto& each : held_)
            keys.push_back (each.key);
        return TrialLevels::ofCards (pair.a, *pair.b, keys, key_);
    }
    if (levels_ == nullptr)
        levels_ = std::make_unique<TrialLevels> (
            *document.instrument, session_.cardsThatSound(), stop->name,
            outletDelaySeconds (*document.instrument, session_.processor().getSampleRate()));
    const int division = document.divisionInHand();
    const int key = std::clamp (key_, document.lowestKey (division), document.highestKey (division));
    return levels_->compare (pair.a, *pair.b, held_, { stop->division, key });
}

void TrialMatcher::compare()
{
    comparison_.reset();
    if (! session_.hasTwoTrials())
        return;
    try
    {
        comparison_ = compareNow();
    }
    catch (const Error&) // a trial that cannot be computed is told where its parts are shown
    {}
}

double TrialMatcher::gainDb (bool isB) const
{
    if (! comparison_)
        return 0.0;
    return isB ? comparison_->gainDbOfB (measure_) : comparison_->gainDbOfA (measure_);
}

/// A trial that cannot be computed sounds on as it last could, and keeps its gain.
void TrialMatcher::match()
{
    compare();
    if (comparison_ || ! session_.hasTwoTrials())
        session_.setTrialGain (gainDb (session_.isSecondTrial()));
}

void TrialMatcher::matchAndTell()
{
    match();
    if (onComparison)
        onComparison();
}

void TrialMatcher::take (bool isB, bool alwaysFades)
{
    followKeys();
    session_.takeTrial (isB, gainDb (isB), alwaysFades);
}

} // namespace stopwright
