// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchWork.h"

#include <algorithm>
#include <stdexcept>

namespace stopwright
{

namespace
{

template <typename Item, typename Flag>
void takeFlags (std::vector<Item>& to, const std::vector<Item>& from, Flag Item::*flag)
{
    for (auto& item : to)
    {
        const auto found = std::ranges::find (from, item.name, &Item::name);
        if (found != from.end())
            item.*flag = (*found).*flag;
    }
}

} // namespace

const StopTablet* BenchWork::stopInHand() const noexcept
{
    const auto index = static_cast<std::size_t> (stopIndex);
    return instrument && stopIndex >= 0 && index < instrument->stops.size() ? &instrument->stops[index] : nullptr;
}

std::string BenchWork::cardName() const
{
    const auto* const stop = stopInHand();
    return stop != nullptr ? stop->cardFile : std::string();
}

TrialPair& BenchWork::pair()
{
    const auto found = trials.find (cardName());
    if (found == trials.end())
        throw std::logic_error ("No card is in hand.");
    return found->second;
}

const TrialPair& BenchWork::pair() const
{
    const auto found = trials.find (cardName());
    if (found == trials.end())
        throw std::logic_error ("No card is in hand.");
    return found->second;
}

const Card& BenchWork::card() const noexcept
{
    static const Card none;
    const auto found = trials.find (cardName());
    return found != trials.end() ? found->second.inHand() : none;
}

void takeRegistration (Instrument& to, const Instrument& from)
{
    takeFlags (to.stops, from.stops, &StopTablet::drawn);
    takeFlags (to.couplers, from.couplers, &Coupler::drawn);
    takeFlags (to.outlets, from.outlets, &Outlet::isOn);
}

void BenchWork::takeRegistrationOf (const BenchWork& other)
{
    if (instrument && other.instrument)
        takeRegistration (*instrument, *other.instrument);
}

bool hasBus (const Instrument& instrument, const StopTablet& stop)
{
    return instrument.mixingBuses.empty()
           || std::ranges::find (instrument.mixingBuses, stop.bus, &MixingBus::name) != instrument.mixingBuses.end();
}

bool isSamePair (const TrialPair& first, const TrialPair& second)
{
    return first.a == second.a && first.b == second.b;
}

bool isSameInstrument (const std::optional<Instrument>& first, const std::optional<Instrument>& second)
{
    if (! first || ! second)
        return first.has_value() == second.has_value();
    auto aligned = *second;
    takeRegistration (aligned, *first);
    return *first == aligned;
}

bool isSameWork (const BenchWork& first, const BenchWork& second)
{
    return std::ranges::equal (first.trials, second.trials,
                               [] (const auto& one, const auto& two)
                               { return one.first == two.first && isSamePair (one.second, two.second); })
           && isSameInstrument (first.instrument, second.instrument);
}

} // namespace stopwright
