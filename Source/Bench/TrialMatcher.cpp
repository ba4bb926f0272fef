// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/TrialMatcher.h"

#include "Sound/OutletDelays.h"
#include "Units/Error.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

/// Without a rate, before there is a sound device, none is late.
std::vector<double> delaysAt (const Instrument& instrument, double rateHz)
{
    return rateHz > 0.0 ? outletDelaySeconds (instrument, rateHz) : std::vector<double>();
}

} // namespace

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
    // That another trial is in hand, or there is one more, is told after what it means for the card in hand.
    if (change == Change::saved || change == Change::trial)
        return;
    if (change != Change::values && change != Change::network)
    {
        // What stands around the card in hand holds for any values and network of it.
        place_.reset();
        comparison_.reset();
        ++round_;
    }
    held_ = heldKeys();
    compare();
}

void TrialMatcher::setMeasure (LevelMeasure measure)
{
    measure_ = measure;
    takeComparison (comparison_, round_);
    if (onMeasure)
        onMeasure();
}

void TrialMatcher::setKey (int key)
{
    if (std::exchange (key_, key) != key && held_.empty())
        compare();
}

void TrialMatcher::followKeys()
{
    if (! session_.hasTwoTrials())
        return;
    const double rateHz = session_.processor().getSampleRate();
    auto held = heldKeys();
    if (held == held_ && rateHz == rateHz_)
        return;
    if (std::exchange (rateHz_, rateHz) != rateHz)
        place_.reset(); // outlets are as late as the rate has them
    held_ = std::move (held);
    compare();
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

/// A comparison that can be made on another thread.
std::function<std::optional<TrialComparison> (const IsUnwanted&)> TrialMatcher::comparing()
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
        return [a = pair.a, b = *pair.b, keys = std::move (keys), key = key_] (const IsUnwanted&)
        { return TrialLevels::ofCards (a, b, keys, key); };
    }
    if (place_ == nullptr)
        place_ = std::make_shared<TrialPlace> (*document.instrument, session_.cardsThatSound(), stop->name,
                                               delaysAt (*document.instrument, rateHz_));
    const int division = document.divisionInHand();
    const int key = std::clamp (key_, document.lowestKey (division), document.highestKey (division));
    return [place = place_, a = pair.a, b = *pair.b, held = held_, inHand = HeldKey { stop->division, key }] (
               const IsUnwanted& isUnwanted) { return place->compareUnless (isUnwanted, a, b, held, inHand); };
}

void TrialMatcher::compare()
{
    if (! session_.hasTwoTrials())
    {
        ++round_;
        comparison_.reset();
        session_.setTrialGainDb (0.0);
        return;
    }
    task_.run (
        [this, work = comparing(), round = round_] (const IsUnwanted& isUnwanted) -> std::function<void()>
        {
            std::optional<TrialComparison> comparison;
            try
            {
                comparison = work (isUnwanted);
                if (! comparison)
                    return {};
            }
            catch (const Error&) // a trial that cannot be computed is told where its parts are shown
            {}
            return [this, comparison, round] { takeComparison (comparison, round); };
        });
}

/// A trial that cannot be computed sounds on as it last could, and keeps its gain.
void TrialMatcher::takeComparison (std::optional<TrialComparison> comparison, int round)
{
    if (round != round_)
        return;
    comparison_ = std::move (comparison);
    if (comparison_)
        session_.setTrialGainDb (gainDb (session_.isSecondTrial()));
    if (onComparison)
        onComparison();
}

double TrialMatcher::gainDb (bool isB) const
{
    if (! comparison_)
        return 0.0;
    return isB ? comparison_->gainDbOfB (measure_) : comparison_->gainDbOfA (measure_);
}

void TrialMatcher::take (bool isB, bool alwaysFades)
{
    followKeys();
    finish();
    session_.takeTrial (isB, gainDb (isB), alwaysFades);
}

} // namespace stopwright
