// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/RailRack.h"

#include "Sound/Voice.h"
#include "Units/Error.h"

#include <algorithm>
#include <optional>

namespace stopwright
{

namespace
{

constexpr std::size_t mostClips = 64; ///< bits of takeClips

template <typename Item>
std::optional<std::size_t> indexOf (const std::vector<Item>& items, const std::string& name)
{
    const auto found = std::ranges::find (items, name, &Item::name);
    if (found == items.end())
        return {};
    return static_cast<std::size_t> (found - items.begin());
}

std::vector<int> namesakes (const std::vector<std::string>& mine, const std::vector<std::string>& theirs)
{
    std::vector<int> map;
    for (const auto& name : mine)
    {
        const auto found = std::ranges::find (theirs, name);
        map.push_back (found == theirs.end() ? -1 : static_cast<int> (found - theirs.begin()));
    }
    return map;
}

template <typename Item>
const Item* at (const std::vector<std::unique_ptr<Item>>& items, int index) noexcept
{
    return index < 0 ? nullptr : items[static_cast<std::size_t> (index)].get();
}

} // namespace

RailRack::RailRack (const Instrument& instrument,
                    const InstrumentCards& cards,
                    const ToneRack& tones,
                    const StreamSpec& spec)
    : internalHz_ (spec.deviceRateHz * internalFactor (spec))
{
    addStops (instrument, cards, tones);
    addPreamps (instrument, cards, Voice::pieceFrames * internalFactor (spec) + block);
    addOutlets (instrument, spec);
}

void RailRack::addStops (const Instrument& instrument, const InstrumentCards& cards, const ToneRack& tones)
{
    for (std::size_t index = 0; index < instrument.stops.size(); ++index)
    {
        const StopTablet& tablet = instrument.stops[index];
        stopNames_.push_back (tablet.name);
        stops_.emplace_back();
        if (! cards.ofStops[index] || ! indexOf (instrument.mixingBuses, tablet.bus))
            continue;
        try
        {
            stops_.back() =
                std::make_unique<RailStop> (tablet, *cards.ofStops[index], tones.tonesOf (index), internalHz_);
        }
        catch (const Error& error)
        {
            throw Error ("The stop " + tablet.name + " cannot be played: " + error.what());
        }
    }
}

void RailRack::addPreamps (const Instrument& instrument, const InstrumentCards& cards, int maxFrames)
{
    static const std::vector<std::optional<Card>> none;
    for (std::size_t index = 0; index < instrument.preamps.size(); ++index)
    {
        const Preamp& preamp = instrument.preamps[index];
        const auto bus = indexOf (instrument.mixingBuses, preamp.bus);
        const auto outlet = indexOf (instrument.outlets, preamp.outlet);
        if (! bus || ! outlet)
            continue;
        preampNames_.push_back (preamp.name);
        preamps_.push_back (std::make_unique<RailPreamp> (instrument.mixingBuses[*bus], preamp,
                                                          index < cards.ofStages.size() ? cards.ofStages[index] : none,
                                                          internalHz_, maxFrames));
        outletOfPreamp_.push_back (*outlet);
        for (const auto& stage : preamps_.back()->stageNames())
            clipNames_.push_back ((preamp.name.empty() ? std::string() : preamp.name + ": ") + stage);
        for (std::size_t stop = 0; stop < stops_.size(); ++stop)
            if (stops_[stop] && instrument.stops[stop].bus == preamp.bus)
                preamps_.back()->bus().addStop (*stops_[stop]);
    }
}

void RailRack::addOutlets (const Instrument& instrument, const StreamSpec& spec)
{
    int slowest = 0;
    for (const auto& preamp : preamps_)
        slowest = std::max (slowest, preamp->latencySamples());
    for (const auto& preamp : preamps_)
        offsetOfPreamp_.push_back (slowest - preamp->latencySamples());

    // Enough to fill a block, and all of it together a whole number of device frames.
    const int factor = internalFactor (spec);
    int lead = block - 1;
    while ((lead + slowest) % factor != 0)
        ++lead;
    for (const Outlet& outlet : instrument.outlets)
    {
        outletNames_.push_back (outlet.name);
        outlets_.push_back (
            std::make_unique<OutletMix> (outlet, spec.deviceRateHz, factor, Voice::pieceFrames, lead, slowest + block));
    }
    delayFrames_ = (lead + slowest) / factor + (outlets_.empty() ? 0 : outlets_.front()->decimatorDelayFrames());
}

void RailRack::playBlocks (int blockCount) noexcept
{
    for (std::size_t index = 0; index < preamps_.size(); ++index)
        preamps_[index]->process (blockCount, *outlets_[outletOfPreamp_[index]], offsetOfPreamp_[index]);
    for (const auto& outlet : outlets_)
        outlet->advance (blockCount * block);
}

void RailRack::render (std::span<double> volts) noexcept
{
    std::ranges::fill (volts, 0.0);
    for (const auto& outlet : outlets_)
        outlet->renderInto (volts);
}

std::uint64_t RailRack::takeClips() noexcept
{
    std::uint64_t clips = 0;
    std::size_t place = 0;
    for (const auto& preamp : preamps_)
    {
        const std::uint64_t ofPreamp = preamp->takeClips();
        clips |= place < mostClips ? ofPreamp << place : 0;
        place += preamp->stageNames().size();
    }
    return clips;
}

RailRack::Adoption RailRack::planAdoption (const RailRack& other) const
{
    Adoption plan { namesakes (stopNames_, other.stopNames_), namesakes (preampNames_, other.preampNames_),
                    namesakes (outletNames_, other.outletNames_), std::vector<std::vector<int>> (stops_.size()) };
    for (std::size_t stop = 0; stop < stops_.size(); ++stop)
    {
        const RailStop* const theirs = at (other.stops_, plan.stops[stop]);
        if (stops_[stop] && theirs != nullptr)
            plan.statesOfStops[stop] = stops_[stop]->adoptionMap (*theirs);
        else
            plan.stops[stop] = -1;
    }
    return plan;
}

void RailRack::adopt (const RailRack& other, const Adoption& plan, int carry) noexcept
{
    begin (carry);
    for (std::size_t outlet = 0; outlet < outlets_.size(); ++outlet)
        if (const OutletMix* const theirs = at (other.outlets_, plan.outlets[outlet]);
            theirs != nullptr && outlets_[outlet]->isLike (*theirs))
            outlets_[outlet]->copyStateFrom (*theirs);
    for (std::size_t stop = 0; stop < stops_.size(); ++stop)
        if (const RailStop* const theirs = at (other.stops_, plan.stops[stop]))
            stops_[stop]->adopt (*theirs, plan.statesOfStops[stop]);
    for (std::size_t preamp = 0; preamp < preamps_.size(); ++preamp)
        if (const RailPreamp* const theirs = at (other.preamps_, plan.preamps[preamp]))
            preamps_[preamp]->adopt (*theirs);
}

void RailRack::begin (int carry) noexcept
{
    for (const auto& outlet : outlets_)
        outlet->begin (carry);
}

} // namespace stopwright
