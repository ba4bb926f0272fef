// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/ToneRack.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

int divisionIndex (const Instrument& instrument, const std::string& name)
{
    return static_cast<int> (std::ranges::find (instrument.divisions, name, &Division::name)
                             - instrument.divisions.begin());
}

std::vector<Wave> wavesOf (const InstrumentCards& cards)
{
    std::vector<Wave> waves;
    for (const auto& card : cards.ofStops)
        if (card)
            for (const Tap& tap : card->taps)
                if (std::ranges::find (waves, tap.wave) == waves.end())
                    waves.push_back (tap.wave);
    return waves;
}

std::vector<Footage> mutationsOf (const InstrumentCards& cards)
{
    std::vector<Footage> mutations;
    for (const auto& card : cards.ofStops)
        if (card)
            for (const Footage& footage : mutationsOf (*card))
                if (std::ranges::find (mutations, footage) == mutations.end())
                    mutations.push_back (footage);
    return mutations;
}

/// How many staggers after the first contact that of a keyed bus closes.
int contactRank (const KeyContacts& contacts, const std::string& keyedBus)
{
    return static_cast<int> (std::ranges::find (contacts.order, keyedBus) - contacts.order.begin());
}

} // namespace

ToneRack::ToneRack (const Instrument& instrument,
                    const InstrumentCards& cards,
                    double internalRateHz,
                    int maxFrames,
                    int carryFrames)
    : rateHz_ (internalRateHz),
      maxFrames_ (maxFrames),
      carryFrames_ (carryFrames),
      waves_ (wavesOf (cards)),
      generators_ (std::make_unique<GeneratorBank> (tuningOf (instrument.tuning, mutationsOf (cards)),
                                                    waves_,
                                                    internalRateHz,
                                                    maxFrames)),
      tonesOfStop_ (instrument.stops.size())
{
    for (std::size_t stop = 0; stop < instrument.stops.size(); ++stop)
    {
        if (! cards.ofStops[stop])
            continue;
        for (const Tap& tap : cards.ofStops[stop]->taps)
            tonesOfStop_[stop].push_back (toneFor (instrument, placeOf (instrument, instrument.stops[stop], tap)));
    }
}

bool ToneRack::isSame (const Place& a, const Place& b)
{
    return a.divisionName == b.divisionName && a.wave == b.wave && a.footage == b.footage
           && a.keyedBusName == b.keyedBusName;
}

ToneRack::Place ToneRack::placeOf (const Instrument& instrument, const StopTablet& stop, const Tap& tap) const
{
    Place place { divisionIndex (instrument, stop.division), stop.division, tap.wave, tap.footage, -1, {} };
    const auto& buses = instrument.keyedBuses;
    if (const auto* const bus = findKeyedBus (buses, tap.wave, tap.footage))
    {
        place.keyedBus = static_cast<int> (bus - buses.data());
        place.keyedBusName = bus->name;
    }
    return place;
}

const KeyedTone* ToneRack::toneFor (const Instrument& instrument, const Place& place)
{
    const auto same =
        std::ranges::find_if (places_, [&place] (const Place& earlier) { return isSame (earlier, place); });
    if (same != places_.end())
        return tones_[static_cast<std::size_t> (same - places_.begin())].get();
    places_.push_back (place);
    tones_.push_back (
        std::make_unique<KeyedTone> (*generators_, settingsFor (instrument, place), maxFrames_, carryFrames_));
    return tones_.back().get();
}

KeyedTone::Settings ToneRack::settingsFor (const Instrument& instrument, const Place& place) const
{
    const Division& division = instrument.divisions[static_cast<std::size_t> (place.division)];
    KeyedTone::Settings settings;
    settings.waveIndex = static_cast<int> (std::ranges::find (waves_, place.wave) - waves_.begin());
    settings.footage = place.footage;
    settings.keyer = instrument.keyer;
    settings.lowestKey = division.lowestKey;
    settings.highestKey = division.highestKey;
    if (place.keyedBus >= 0)
    {
        const KeyedBus& bus = instrument.keyedBuses[static_cast<std::size_t> (place.keyedBus)];
        settings.keyer = bus.keyer.value_or (instrument.keyer);
        settings.sag = bus.collectorOhms ? bus.loadOhms / *bus.collectorOhms : 0.0;
    }
    const auto last = static_cast<int> (instrument.contacts.order.size());
    const int rank = contactRank (instrument.contacts, place.keyedBusName);
    const auto staggers = [&] (int count)
    { return static_cast<int> (std::lround (count * instrument.contacts.staggerSeconds * rateHz_)); };
    settings.downDelay = staggers (rank);
    settings.upDelay = staggers (last - rank);
    return settings;
}

void ToneRack::key (int division, int key, bool down, int frameOffset) noexcept
{
    for (std::size_t tone = 0; tone < tones_.size(); ++tone)
        if (places_[tone].division == division)
            tones_[tone]->key (key, down, frameOffset);
}

void ToneRack::render (int carry, int frameCount) noexcept
{
    generators_->advance (frameCount);
    for (const auto& tone : tones_)
        tone->render (*generators_, carry, frameCount);
    time_ += frameCount;
}

void ToneRack::keep (int from, int count) noexcept
{
    for (const auto& tone : tones_)
        tone->keep (from, count);
}

std::vector<int> ToneRack::adoptionMap (const ToneRack& other) const
{
    std::vector<int> map;
    for (const Place& place : places_)
    {
        const auto same =
            std::ranges::find_if (other.places_, [&place] (const Place& theirs) { return isSame (theirs, place); });
        map.push_back (same == other.places_.end() ? -1 : static_cast<int> (same - other.places_.begin()));
    }
    return map;
}

void ToneRack::adopt (const ToneRack& other, const std::vector<int>& map) noexcept
{
    for (std::size_t tone = 0; tone < tones_.size(); ++tone)
        if (map[tone] >= 0)
            tones_[tone]->copyKeysFrom (*other.tones_[static_cast<std::size_t> (map[tone])]);
}

void ToneRack::jumpTo (std::int64_t time) noexcept
{
    time_ = time;
    generators_->jumpTo (time);
}

} // namespace stopwright
