// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/RailStudy.h"

#include "Organ/UnknownName.h"
#include "Study/BusOhms.h"
#include "Study/TapPartials.h"
#include "Units/Error.h"

#include <algorithm>
#include <span>
#include <utility>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

template <typename Items>
std::optional<std::size_t> indexOf (const Items& items, const std::string& name)
{
    for (std::size_t index = 0; index < items.size(); ++index)
        if (items[index].name == name)
            return index;
    return {};
}

} // namespace

RailStudy::RailStudy (Instrument instrument, InstrumentCards cards)
    : instrument_ (std::move (instrument)),
      cards_ (std::move (cards)),
      stopsOfBus_ (instrument_.mixingBuses.size()),
      preampOfBus_ (instrument_.mixingBuses.size()),
      keptOnward_ (instrument_.mixingBuses.size())
{
    if (! cards_.errors.empty())
        throw Error (cards_.errors.front());
    for (std::size_t stop = 0; stop < instrument_.stops.size(); ++stop)
        addStop (stop);
    static const std::vector<std::optional<Card>> none;
    for (std::size_t index = 0; index < instrument_.preamps.size(); ++index)
    {
        const Preamp& preamp = instrument_.preamps[index];
        preamps_.emplace_back (preamp, index < cards_.ofStages.size() ? cards_.ofStages[index] : none);
        const auto bus = indexOf (instrument_.mixingBuses, preamp.bus);
        if (bus && ! preampOfBus_[*bus])
            preampOfBus_[*bus] = index;
    }
}

void RailStudy::addStop (std::size_t stop)
{
    const StopTablet& tablet = instrument_.stops[stop];
    stops_.emplace_back();
    if (! hasCard (stop))
        return;
    stops_.back().bus = indexOf (instrument_.mixingBuses, tablet.bus);
    stops_.back().keySource = keySourceOf (instrument_, tablet.division, card (stop));
    stops_.back().port = std::make_unique<StopPort> (card (stop), tablet.mixingOhms);
    if (const auto bus = stops_.back().bus)
        stopsOfBus_[*bus].push_back (stop);
}

std::size_t RailStudy::findStop (std::string_view name) const
{
    for (std::size_t stop = 0; stop < instrument_.stops.size(); ++stop)
        if (instrument_.stops[stop].name == name && hasCard (stop))
            return stop;
    refuseStop (instrument_, name);
}

StopStand RailStudy::standWhenRetired (std::size_t stop) const noexcept
{
    return instrument_.stops[stop].whenRetired == WhenRetired::grounded ? StopStand::grounded : StopStand::open;
}

RailState RailStudy::withDrawn (const std::vector<std::size_t>& stops) const
{
    RailState state;
    for (std::size_t stop = 0; stop < stops_.size(); ++stop)
    {
        const bool isDrawn = std::ranges::find (stops, stop) != stops.end();
        state.stands.push_back (isDrawn ? StopStand::drawn : standWhenRetired (stop));
        state.mixingOhms.push_back (instrument_.stops[stop].mixingOhms);
    }
    return state;
}

RailState RailStudy::asOpened() const
{
    std::vector<std::size_t> drawn;
    for (std::size_t stop = 0; stop < stops_.size(); ++stop)
        if (instrument_.stops[stop].drawn && hasCard (stop))
            drawn.push_back (stop);
    return withDrawn (drawn);
}

Complex RailStudy::busSiemens (std::size_t bus, const RailState& state, double frequencyHz) const
{
    Complex siemens = ownSiemens (instrument_.mixingBuses[bus], frequencyHz);
    for (const std::size_t stop : stopsOfBus_[bus])
    {
        const double ohms = state.mixingOhms[stop];
        if (state.stands[stop] == StopStand::drawn)
            siemens += 1.0 / (stops_[stop].port->at (frequencyHz).ohms + ohms);
        else if (state.stands[stop] == StopStand::grounded)
            siemens += 1.0 / ohms;
    }
    return siemens;
}

Complex RailStudy::busOhms (std::size_t bus, const RailState& state, double frequencyHz) const
{
    const MixingBus& values = instrument_.mixingBuses[bus];
    return busOhmsAt (values, feels (values) ? busSiemens (bus, state, frequencyHz) : 0.0, frequencyHz);
}

Complex RailStudy::onward (std::size_t bus, std::size_t stageEnd, double frequencyHz) const
{
    const auto preamp = preampOfBus_[bus];
    if (! preamp || stageEnd == 0)
        return 1.0;
    if (stageEnd < preamps_[*preamp].stageCount())
        return preamps_[*preamp].upTo (stageEnd, frequencyHz);
    auto& kept = keptOnward_[bus];
    const auto known = kept.find (frequencyHz);
    if (known != kept.end())
        return known->second;
    return kept.emplace (frequencyHz, preamps_[*preamp].at (frequencyHz)).first->second;
}

std::vector<RailPartial> RailStudy::partials (std::size_t stop,
                                              int key,
                                              const RailState& state,
                                              std::size_t stageEnd,
                                              double highestHz) const
{
    const Stop& asked = stops_[stop];
    RailState drawn = state;
    drawn.stands[stop] = StopStand::drawn;
    auto partials = throughGains (
        tapPartials (card (stop), *asked.keySource, key, highestHz),
        instrument_.stops[stop].polarity, [&asked](double frequencyHz) -> const auto& {
            return asked.port->at (frequencyHz).tapGains;
        });
    if (! asked.bus)
        return partials;
    for (RailPartial& partial : partials)
        partial.volts *= busOhms (*asked.bus, drawn, partial.frequencyHz)
                         / (asked.port->at (partial.frequencyHz).ohms + drawn.mixingOhms[stop])
                         * onward (*asked.bus, stageEnd, partial.frequencyHz);
    return partials;
}

} // namespace stopwright
