// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/TrialMatcher.h"

#include "Sound/OutletDelays.h"
#include "Units/Error.h"

#include <algorithm>

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
    if (change != BenchSession::Change::trial && change != BenchSession::Change::saved)
        levels_.reset();
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
    const auto held = heldKeys();
    const auto* const stop = document.stopInHand();
    if (stop == nullptr)
    {
        std::vector<int> keys;
        keys.reserve (held.size());
        for (const auto& each : held)
            keys.push_back (each.key);
        return TrialLevels::ofCards (pair.a, *pair.b, keys, key_);
    }
    if (levels_ == nullptr)
        levels_ = std::make_unique<TrialLevels> (
            *document.instrument, session_.cardsThatSound(), stop->name,
            outletDelaySeconds (*document.instrument, session_.processor().getSampleRate()));
    const int division = document.divisionInHand();
    const int key = std::clamp (key_, document.lowestKey (division), document.highestKey (division));
    return levels_->compare (pair.a, *pair.b, held, { stop->division, key });
}

std::optional<TrialComparison> TrialMatcher::compare()
{
    if (! session_.hasTwoTrials())
        return {};
    try
    {
        return compareNow();
    }
    catch (const Error&)
    {
        return {}; // a trial that cannot be computed is told where its parts are shown
    }
}

void TrialMatcher::take (bool isB, bool alwaysFades)
{
    const auto comparison = compare();
    const double gainDb = ! comparison ? 0.0
                          : isB        ? comparison->gainDbOfB (measure_)
                                       : comparison->gainDbOfA (measure_);
    session_.takeTrial (isB, gainDb, alwaysFades);
}

} // namespace stopwright
