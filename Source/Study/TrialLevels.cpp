// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/TrialLevels.h"

#include "Organ/PlayableInstrument.h"
#include "Study/BusOhms.h"
#include "Study/BusWaves.h"
#include "Study/RotaryMeans.h"
#include "Study/TapPartials.h"
#include "Study/ToneLevel.h"
#include "Units/AWeighting.h"
#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <numbers>
#include <utility>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

template <typename Items>
std::optional<std::size_t> indexOf (const Items& items, const std::string& name)
{
    const auto found = std::ranges::find (items, name, &Items::value_type::name);
    if (found == items.end())
        return {};
    return static_cast<std::size_t> (found - items.begin());
}

std::size_t requiredStop (const Instrument& instrument, const std::string& tablet)
{
    if (const auto stop = indexOf (instrument.stops, tablet))
        return *stop;
    throw Error ("There is no tablet " + quotedText (tablet) + " in this instrument; take one of its stops in hand.");
}

InstrumentCards withoutStop (InstrumentCards cards, std::size_t stop)
{
    cards.ofStops[stop].reset();
    return cards;
}

/// What a card gives unloaded, its absent partials left out.
std::vector<RailPartial>
    unloaded (const Card& card, const KeySource& keySource, const StopPort& port, int key, double polarity)
{
    auto ofTaps = tapPartials (card, keySource, key);
    std::erase_if (ofTaps, [] (const TapPartial& partial) { return std::abs (partial.volts) == 0.0; });
    return throughGains (
        ofTaps, polarity, [&port](double hz) -> const auto& { return port.at (hz).tapGains; });
}

/// The same as a current into a bus at zero volts.
void addAmps (const Card& card,
              const KeySource& keySource,
              const StopPort& port,
              const StopTablet& tablet,
              const std::vector<int>& keys,
              std::vector<std::vector<RailPartial>>& amps)
{
    for (const int key : keys)
    {
        amps.push_back (unloaded (card, keySource, port, key, tablet.polarity));
        for (RailPartial& partial : amps.back())
            partial.volts /= port.at (partial.frequencyHz).ohms + tablet.mixingOhms;
    }
}

template <typename PowerGain>
TonePower powerOf (const std::vector<RailPartial>& tone, PowerGain&& powerGain)
{
    TonePower power;
    for (const RailPartial& partial : tone)
    {
        const double plain = 0.5 * powerGain (partial.frequencyHz) * std::norm (partial.volts);
        const double weight = aWeighting (partial.frequencyHz);
        power.plain += plain;
        power.aWeighted += weight * weight * plain;
    }
    return power;
}

TonePower powerOf (const std::vector<RailPartial>& tone)
{
    return powerOf (tone, [] (double) { return 1.0; });
}

TonePower powerOfCard (const Card& card, const std::vector<int>& keys)
{
    const auto keySource = keySourceForCardAlone (card);
    constexpr double expectedOhms = 47e3;
    const StopPort port (card, expectedOhms);
    std::vector<std::vector<RailPartial>> tones;
    for (const int key : keys)
        if (key >= keySource.lowestKey && key <= keySource.highestKey)
            tones.push_back (unloaded (card, keySource, port, key, 1.0));
    return powerOf (addTones (tones));
}

} // namespace

TrialLevels::TrialLevels (const Instrument& instrument,
                          const InstrumentCards& cards,
                          const std::string& tabletInHand,
                          std::vector<double> outletDelaySeconds)
    : inHand_ (requiredStop (instrument, tabletInHand)),
      instrument_ (playableInstrument (instrument)),
      cards_ (withoutStop (cards, inHand_)),
      rail_ (instrument_, cards_),
      state_ (rail_.asOpened()),
      busInHand_ (indexOf (instrument_.mixingBuses, instrument_.stops[inHand_].bus)),
      outletDelaySeconds_ (std::move (outletDelaySeconds))
{
    addWays (cards);
}

void TrialLevels::addWays (const InstrumentCards& cards)
{
    static const std::vector<std::optional<Card>> none;
    for (std::size_t index = 0; index < instrument_.preamps.size(); ++index)
    {
        const Preamp& preamp = instrument_.preamps[index];
        const auto bus = indexOf (instrument_.mixingBuses, preamp.bus);
        const auto outlet = indexOf (instrument_.outlets, preamp.outlet);
        if (bus && outlet)
            ways_.push_back ({ *bus,
                               *outlet,
                               PreampResponse (preamp, index < cards.ofStages.size() ? cards.ofStages[index] : none),
                               {} });
    }
}

TrialLevels::Keys TrialLevels::keysOf (const std::vector<HeldKey>& held, const HeldKey& keyInHand) const
{
    std::vector<HeldKey> there = held.empty() ? std::vector { keyInHand } : held;
    std::erase_if (there,
                   [this] (const HeldKey& one)
                   {
                       const auto division = indexOf (instrument_.divisions, one.division);
                       return ! division || one.key < instrument_.divisions[*division].lowestKey
                              || one.key > instrument_.divisions[*division].highestKey;
                   });
    return soundingKeys (instrument_, there);
}

std::optional<TrialLevels::Tone> TrialLevels::ampsOfOthers (std::size_t bus,
                                                            const InstrumentCards& cards,
                                                            const Keys& keys,
                                                            const std::function<bool()>& isUnwanted) const
{
    Tones amps;
    for (const std::size_t stop : drawnStopsOn (rail_, bus))
    {
        if (isUnwanted())
            return std::nullopt;
        const StopTablet& tablet = instrument_.stops[stop];
        addAmps (*cards.ofStops[stop], rail_.keySource (stop), rail_.port (stop), tablet,
                 keys[*indexOf (instrument_.divisions, tablet.division)], amps);
    }
    return addTones (amps);
}

TrialLevels::Trial TrialLevels::trialOf (const Card& card, const Keys& keys) const
{
    const StopTablet& tablet = instrument_.stops[inHand_];
    Trial trial;
    if (! busInHand_ || ! tablet.drawn)
        return trial;
    InstrumentCards alone;
    alone.ofStops.resize (instrument_.stops.size());
    alone.ofStops[inHand_] = card;
    alone = sagged (std::move (alone), instrument_, keys);
    trial.port.emplace (card, tablet.mixingOhms);
    Tones amps;
    addAmps (*alone.ofStops[inHand_], keySourceOf (instrument_, tablet.division, card), *trial.port, tablet,
             keys[*indexOf (instrument_.divisions, tablet.division)], amps);
    trial.amps = addTones (amps);
    return trial;
}

/// What the stop in hand puts on its bus.
Complex TrialLevels::siemensOf (const Trial& trial, double frequencyHz) const
{
    const StopTablet& tablet = instrument_.stops[inHand_];
    if (trial.port)
        return 1.0 / (trial.port->at (frequencyHz).ohms + tablet.mixingOhms);
    return tablet.whenRetired == WhenRetired::grounded ? 1.0 / tablet.mixingOhms : 0.0;
}

/// `trial` is none for a bus that the stop in hand is not on.
void TrialLevels::addOnward (std::size_t bus, const Tone& amps, const Trial* trial, std::vector<Tones>& outlets) const
{
    const MixingBus& values = instrument_.mixingBuses[bus];
    Tone volts = amps;
    for (RailPartial& partial : volts)
    {
        const double hz = partial.frequencyHz;
        Complex siemens = 0.0;
        if (feels (values))
            siemens = rail_.busSiemens (bus, state_, hz) + (trial != nullptr ? siemensOf (*trial, hz) : 0.0);
        partial.volts *= busOhmsAt (values, siemens, hz);
    }
    for (const Way& way : ways_)
    {
        if (way.bus != bus)
            continue;
        outlets[way.outlet].push_back (volts);
        for (RailPartial& partial : outlets[way.outlet].back())
        {
            const auto [gain, isNew] = way.kept.try_emplace (partial.frequencyHz);
            if (isNew)
                gain->second = way.preamp.at (partial.frequencyHz);
            partial.volts *= gain->second;
        }
    }
}

/// What a rotary speaker leaves in step with the other outlets; the rest of its power goes to `apart`.
TrialLevels::Tone TrialLevels::rotated (std::size_t outlet, Tone tone, TonePower& apart) const
{
    const RotaryMeans means (instrument_.outlets[outlet].rotary);
    const double late = outlet < outletDelaySeconds_.size() ? outletDelaySeconds_[outlet] : 0.0;
    apart.add (powerOf (tone, [&means] (double hz) { return means.power (hz) - std::norm (means.gain (hz)); }));
    for (RailPartial& partial : tone)
        partial.volts *=
            means.gain (partial.frequencyHz) * std::polar (1.0, -2.0 * std::numbers::pi * partial.frequencyHz * late);
    return tone;
}

TonePower TrialLevels::heard (const std::vector<Tones>& outlets) const
{
    TonePower sum;
    Tones inStep;
    for (std::size_t index = 0; index < outlets.size(); ++index)
    {
        const Outlet& outlet = instrument_.outlets[index];
        inStep.push_back (addTones (outlets[index]));
        if (outlet.kind == OutletKind::rotary)
            inStep.back() = rotated (index, std::move (inStep.back()), sum);
        // The mean of (1 + depth sin)^2 is 1 + depth^2 / 2.
        if (outlet.kind == OutletKind::tremulant && outlet.isOn)
            sum.add (
                powerOf (inStep.back(), [depth = outlet.tremulant.depth] (double) { return 0.5 * depth * depth; }));
    }
    sum.add (powerOf (addTones (inStep)));
    return sum;
}

std::optional<TrialComparison> TrialLevels::compareUnless (const std::function<bool()>& isUnwanted,
                                                           const Card& a,
                                                           const Card& b,
                                                           const std::vector<HeldKey>& held,
                                                           const HeldKey& keyInHand) const
{
    const Keys keys = keysOf (held, keyInHand);
    const InstrumentCards cards = sagged (cards_, instrument_, keys);
    std::vector<Tones> outlets (instrument_.outlets.size());
    Tone beside;
    for (std::size_t bus = 0; bus < instrument_.mixingBuses.size(); ++bus)
    {
        auto amps = ampsOfOthers (bus, cards, keys, isUnwanted);
        if (! amps || isUnwanted())
            return std::nullopt;
        if (bus == busInHand_)
            beside = std::move (*amps);
        else
            addOnward (bus, *amps, nullptr, outlets);
    }
    const auto powerWith = [&] (const Card& card) -> std::optional<TonePower>
    {
        if (isUnwanted())
            return std::nullopt;
        auto all = outlets;
        if (busInHand_)
        {
            const Trial trial = trialOf (card, keys);
            addOnward (*busInHand_, addTones (Tones { beside, trial.amps }), &trial, all);
        }
        return heard (all);
    };
    const auto ofA = powerWith (a);
    const auto ofB = ofA ? powerWith (b) : std::nullopt;
    return ofB ? std::optional (TrialComparison { *ofA, *ofB }) : std::nullopt;
}

TrialComparison TrialLevels::ofCards (const Card& a, const Card& b, const std::vector<int>& heldKeys, int keyInHand)
{
    const std::vector<int> keys = heldKeys.empty() ? std::vector { keyInHand } : heldKeys;
    return { powerOfCard (a, keys), powerOfCard (b, keys) };
}

} // namespace stopwright
