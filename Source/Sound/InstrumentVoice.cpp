// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/InstrumentVoice.h"

#include "Sound/KeyDesk.h"
#include "Sound/RailPreamp.h"
#include "Sound/ToneRack.h"
#include "Units/Error.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace stopwright
{

namespace
{

constexpr int block = RailStop::length;
constexpr int mostCarry = block - 1;

int internalPieceFrames (const StreamSpec& spec)
{
    return Voice::pieceFrames * internalFactor (spec);
}

double internalRateHz (const StreamSpec& spec)
{
    return spec.deviceRateHz * internalFactor (spec);
}

/// With a bus for stops to be on, if it has none.
Instrument withBus (Instrument instrument)
{
    if (! instrument.mixingBuses.empty())
        return instrument;
    instrument.mixingBuses.push_back ({});
    instrument.outlets.push_back ({});
    instrument.preamps.push_back ({});
    for (StopTablet& stop : instrument.stops)
        stop.bus.clear();
    return instrument;
}

template <typename Item>
std::optional<std::size_t> indexOf (const std::vector<Item>& items, const std::string& name)
{
    const auto found = std::ranges::find (items, name, &Item::name);
    if (found == items.end())
        return {};
    return static_cast<std::size_t> (found - items.begin());
}

} // namespace

struct InstrumentVoice::Implementation
{
    Implementation (Instrument playable, const InstrumentCards& cards, const StreamSpec& spec);

    void addStops (const InstrumentCards& cards);
    void addPreamps (const InstrumentCards& cards, const StreamSpec& spec);
    void addOutlets (const StreamSpec& spec);
    void setStopControl (int index, double value) noexcept;
    void soundKey (int division, int key, bool down, int frameOffset) noexcept;
    void playBlocks (int blockCount) noexcept;

    std::optional<int> controlOf (const std::string& tablet, std::optional<int> ofStop) const;

    int couplerCount() const noexcept { return static_cast<int> (instrument.couplers.size()); }

    int firstStopControl() const noexcept { return couplerCount() + static_cast<int> (outlets.size()); }

    RailStop* stopOf (const std::string& tablet) const;

    Instrument instrument;
    double internalHz;
    int factor;
    KeyDesk desk;
    ToneRack tones;
    std::vector<std::unique_ptr<RailStop>> stops; ///< of the instrument's; null for one that cannot sound
    std::vector<std::unique_ptr<RailPreamp>> preamps;
    std::vector<std::size_t> outletOfPreamp;
    std::vector<int> offsetOfPreamp; ///< what it waits for the slowest
    std::vector<std::unique_ptr<OutletMix>> outlets;
    std::vector<std::string> clipNames;

    struct StopControl
    {
        RailStop* stop = nullptr;
        int first = 0; ///< its draw, then its knobs
    };

    std::vector<StopControl> stopControls;
    int controlCount = 0;
    int delay = 0; ///< device frames
    int carry = 0; ///< tone frames that wait for their block to be full
    bool hasFault = false;
};

InstrumentVoice::Implementation::Implementation (Instrument playable,
                                                 const InstrumentCards& cards,
                                                 const StreamSpec& spec)
    : instrument (withBus (std::move (playable))),
      internalHz (internalRateHz (spec)),
      factor (internalFactor (spec)),
      desk (instrument),
      tones (instrument, cards, internalHz, internalPieceFrames (spec), mostCarry)
{
    addStops (cards);
    addPreamps (cards, spec);
    addOutlets (spec);
    controlCount = firstStopControl();
    for (const auto& stop : stops)
    {
        if (! stop)
            continue;
        stopControls.push_back ({ stop.get(), controlCount });
        controlCount += 1 + stop->knobCount();
    }
}

void InstrumentVoice::Implementation::addStops (const InstrumentCards& cards)
{
    for (std::size_t index = 0; index < instrument.stops.size(); ++index)
    {
        const StopTablet& tablet = instrument.stops[index];
        stops.emplace_back();
        if (! cards.ofStops[index] || ! indexOf (instrument.mixingBuses, tablet.bus))
            continue;
        try
        {
            stops.back() =
                std::make_unique<RailStop> (tablet, *cards.ofStops[index], tones.tonesOf (index), internalHz);
        }
        catch (const Error& error)
        {
            throw Error ("The stop " + tablet.name + " cannot be played: " + error.what());
        }
    }
}

void InstrumentVoice::Implementation::addPreamps (const InstrumentCards& cards, const StreamSpec& spec)
{
    static const std::vector<std::optional<Card>> none;
    for (std::size_t index = 0; index < instrument.preamps.size(); ++index)
    {
        const Preamp& preamp = instrument.preamps[index];
        const auto bus = indexOf (instrument.mixingBuses, preamp.bus);
        const auto outlet = indexOf (instrument.outlets, preamp.outlet);
        if (! bus || ! outlet)
            continue;
        preamps.push_back (std::make_unique<RailPreamp> (instrument.mixingBuses[*bus], preamp,
                                                         index < cards.ofStages.size() ? cards.ofStages[index] : none,
                                                         internalHz, internalPieceFrames (spec) + mostCarry));
        outletOfPreamp.push_back (*outlet);
        for (const auto& stage : preamps.back()->stageNames())
            clipNames.push_back ((preamp.name.empty() ? std::string() : preamp.name + ": ") + stage);
        for (std::size_t stop = 0; stop < stops.size(); ++stop)
            if (stops[stop] && instrument.stops[stop].bus == preamp.bus)
                preamps.back()->bus().addStop (*stops[stop]);
    }
}

void InstrumentVoice::Implementation::addOutlets (const StreamSpec& spec)
{
    int slowest = 0;
    for (const auto& preamp : preamps)
        slowest = std::max (slowest, preamp->latencySamples());
    for (const auto& preamp : preamps)
        offsetOfPreamp.push_back (slowest - preamp->latencySamples());

    // Enough to fill a block, and all of it together a whole number of device frames.
    int lead = mostCarry;
    while ((lead + slowest) % factor != 0)
        ++lead;
    for (const Outlet& outlet : instrument.outlets)
        outlets.push_back (
            std::make_unique<OutletMix> (outlet, spec.deviceRateHz, factor, pieceFrames, lead, slowest + block));
    delay = (lead + slowest) / factor + (outlets.empty() ? 0 : outlets.front()->decimatorDelayFrames());
}

void InstrumentVoice::Implementation::soundKey (int division, int key, bool down, int frameOffset) noexcept
{
    tones.key (division, key, down, frameOffset * factor);
}

void InstrumentVoice::Implementation::playBlocks (int blockCount) noexcept
{
    for (std::size_t index = 0; index < preamps.size(); ++index)
        preamps[index]->process (blockCount, *outlets[outletOfPreamp[index]], offsetOfPreamp[index]);
    for (const auto& outlet : outlets)
        outlet->advance (blockCount * block);
}

RailStop* InstrumentVoice::Implementation::stopOf (const std::string& tablet) const
{
    const auto index = indexOf (instrument.stops, tablet);
    return index ? stops[*index].get() : nullptr;
}

std::optional<int> InstrumentVoice::Implementation::controlOf (const std::string& tablet,
                                                               std::optional<int> ofStop) const
{
    const RailStop* const stop = stopOf (tablet);
    const auto found = std::ranges::find (stopControls, stop, &StopControl::stop);
    if (stop == nullptr || ! ofStop || found == stopControls.end())
        return {};
    return found->first + *ofStop;
}

InstrumentVoice::InstrumentVoice (const Instrument& instrument, const InstrumentCards& cards, const StreamSpec& spec)
    : implementation_ (std::make_unique<Implementation> (instrument, cards, spec))
{}

InstrumentVoice::~InstrumentVoice() = default;

std::optional<int> InstrumentVoice::findDraw (const std::string& tablet) const
{
    return implementation_->controlOf (tablet, 0);
}

std::optional<int> InstrumentVoice::findCoupler (const std::string& tablet) const
{
    const auto index = indexOf (implementation_->instrument.couplers, tablet);
    return index ? std::optional (static_cast<int> (*index)) : std::nullopt;
}

std::optional<int> InstrumentVoice::findOutletSwitch (const std::string& outlet) const
{
    const auto index = indexOf (implementation_->instrument.outlets, outlet);
    return index ? std::optional (implementation_->couplerCount() + static_cast<int> (*index)) : std::nullopt;
}

// The draw of a stop comes before its knobs.

std::optional<int> InstrumentVoice::findKnob (const std::string& tablet, const PartKnob& knob) const
{
    const RailStop* const stop = implementation_->stopOf (tablet);
    const auto found = stop != nullptr ? stop->findKnob (knob) : std::nullopt;
    return found ? implementation_->controlOf (tablet, 1 + *found) : std::nullopt;
}

std::optional<int> InstrumentVoice::findTapLevelKnob (const std::string& tablet, const std::string& tap) const
{
    const RailStop* const stop = implementation_->stopOf (tablet);
    const auto found = stop != nullptr ? stop->findTapLevelKnob (tap) : std::nullopt;
    return found ? implementation_->controlOf (tablet, 1 + *found) : std::nullopt;
}

std::optional<int> InstrumentVoice::findMixingKnob (const std::string& tablet) const
{
    const RailStop* const stop = implementation_->stopOf (tablet);
    return stop != nullptr ? implementation_->controlOf (tablet, 1 + stop->mixingKnob()) : std::nullopt;
}

const std::vector<std::string>& InstrumentVoice::clipNames() const noexcept
{
    return implementation_->clipNames;
}

int InstrumentVoice::controlCount() const noexcept
{
    return implementation_->controlCount;
}

void InstrumentVoice::setControl (int index, double value) noexcept
{
    auto& own = *implementation_;
    if (index < 0 || index >= own.controlCount || ! std::isfinite (value))
        return;
    const bool isOn = value >= 0.5;
    if (index < own.couplerCount())
        own.desk.drawCoupler (index, isOn,
                              [&own] (int division, int key, bool down) { own.soundKey (division, key, down, 0); });
    else if (index < own.firstStopControl())
        own.outlets[static_cast<std::size_t> (index - own.couplerCount())]->stage().setOn (isOn);
    else
        own.setStopControl (index, value);
}

void InstrumentVoice::Implementation::setStopControl (int index, double value) noexcept
{
    const auto after = std::ranges::upper_bound (stopControls, index, {}, &StopControl::first);
    const StopControl& control = *std::prev (after);
    if (index == control.first)
        control.stop->setDrawn (value >= 0.5);
    else
        control.stop->setKnobTarget (index - control.first - 1, value);
}

bool InstrumentVoice::controlsMove() const noexcept
{
    return std::ranges::any_of (implementation_->stopControls,
                                [] (const auto& control) { return control.stop->knobsMove(); });
}

int InstrumentVoice::divisionOfChannel (int channel) const noexcept
{
    const auto& divisions = implementation_->instrument.divisions;
    const auto hears = [&divisions] (std::optional<int> wanted)
    {
        const auto found = std::ranges::find_if (divisions, [wanted] (const Division& division)
                                                 { return division.midiChannel == wanted; });
        return found == divisions.end() ? -1 : static_cast<int> (found - divisions.begin());
    };
    const int claimed = hears (channel);
    return claimed >= 0 ? claimed : hears (std::nullopt);
}

void InstrumentVoice::key (int division, int key, bool down, int frameOffset) noexcept
{
    auto& own = *implementation_;
    own.desk.key (division, key, down,
                  [&own, frameOffset] (int soundingDivision, int soundingKey, bool isDown)
                  { own.soundKey (soundingDivision, soundingKey, isDown, frameOffset); });
}

void InstrumentVoice::renderPiece (std::span<double> volts) noexcept
{
    auto& own = *implementation_;
    const int frames = static_cast<int> (volts.size()) * own.factor;
    own.tones.render (own.carry, frames);
    const int blockCount = (own.carry + frames) / block;
    own.playBlocks (blockCount);
    own.carry += frames - blockCount * block;
    own.tones.keep (blockCount * block, own.carry);

    std::ranges::fill (volts, 0.0);
    for (const auto& outlet : own.outlets)
        outlet->renderInto (volts);

    // Written so that NaN counts as a fault.
    if (! std::ranges::all_of (volts, [] (double value) { return std::abs (value) <= runawayVolts; }))
        own.hasFault = true;
}

void InstrumentVoice::releaseAllKeys() noexcept
{
    for (int division = 0; division < implementation_->desk.divisionCount(); ++division)
        for (int number = 0; number < HeldKeys::keyCount; ++number)
            key (division, number, false, 0);
}

int InstrumentVoice::soundingKeys() const noexcept
{
    return implementation_->desk.soundingKeys();
}

void InstrumentVoice::setSwell (double position) noexcept
{
    for (const auto& outlet : implementation_->outlets)
        outlet->stage().setSwell (position);
}

std::uint64_t InstrumentVoice::takeClips() noexcept
{
    std::uint64_t clips = 0;
    std::size_t place = 0;
    for (const auto& preamp : implementation_->preamps)
    {
        clips |= place < 64 ? preamp->takeClips() << place : 0;
        place += preamp->stageNames().size();
    }
    return clips;
}

bool InstrumentVoice::hasFault() const noexcept
{
    return implementation_->hasFault;
}

int InstrumentVoice::delayFrames() const noexcept
{
    return implementation_->delay;
}

std::int64_t InstrumentVoice::time() const noexcept
{
    return implementation_->tones.time();
}

namespace
{

/// For each of the new one's parts, the old one's with the same name or -1.
struct InstrumentAdoption : Voice::Adoption
{
    std::vector<int> tones;
    std::vector<int> stops;
    std::vector<std::vector<int>> statesOfStops;
    std::vector<int> outlets;
};

template <typename Item>
std::vector<int> namesakes (const std::vector<Item>& mine, const std::vector<Item>& theirs)
{
    std::vector<int> map;
    for (const Item& item : mine)
    {
        const auto index = indexOf (theirs, item.name);
        map.push_back (index ? static_cast<int> (*index) : -1);
    }
    return map;
}

} // namespace

std::unique_ptr<Voice::Adoption> InstrumentVoice::prepareAdoption (const Voice& other) const
{
    const auto* const instrument = dynamic_cast<const InstrumentVoice*> (&other);
    if (instrument == nullptr)
        return nullptr;
    const auto& own = *implementation_;
    const auto& old = *instrument->implementation_;

    auto adoption = std::make_unique<InstrumentAdoption>();
    adoption->tones = own.tones.adoptionMap (old.tones);
    adoption->stops = namesakes (own.instrument.stops, old.instrument.stops);
    adoption->outlets = namesakes (own.instrument.outlets, old.instrument.outlets);
    for (std::size_t stop = 0; stop < own.stops.size(); ++stop)
    {
        const int from = adoption->stops[stop];
        const RailStop* const theirs = from >= 0 ? old.stops[static_cast<std::size_t> (from)].get() : nullptr;
        adoption->statesOfStops.push_back (own.stops[stop] && theirs != nullptr ? own.stops[stop]->adoptionMap (*theirs)
                                                                                : std::vector<int>());
        if (! own.stops[stop] || theirs == nullptr)
            adoption->stops[stop] = -1;
    }
    return adoption;
}

void InstrumentVoice::adopt (const Voice& other, const Adoption* how) noexcept
{
    auto& own = *implementation_;
    own.tones.jumpTo (other.time());
    if (how == nullptr)
        return;

    const auto& map = static_cast<const InstrumentAdoption&> (*how);
    const auto& old = *static_cast<const InstrumentVoice&> (other).implementation_;
    own.desk.adopt (old.desk);
    own.carry = old.carry;
    own.tones.adopt (old.tones, map.tones);
    for (int division = 0; division < own.desk.divisionCount(); ++division)
        for (int key = 0; key < HeldKeys::keyCount; ++key)
            own.soundKey (division, key, own.desk.sounds (division, key), 0);

    for (std::size_t outlet = 0; outlet < own.outlets.size(); ++outlet)
    {
        const int from = map.outlets[outlet];
        own.outlets[outlet]->begin (own.carry);
        if (from >= 0 && ! old.hasFault && own.outlets[outlet]->isLike (*old.outlets[static_cast<std::size_t> (from)]))
            own.outlets[outlet]->copyStateFrom (*old.outlets[static_cast<std::size_t> (from)]);
    }
    if (old.hasFault)
        return;
    for (std::size_t stop = 0; stop < own.stops.size(); ++stop)
        if (map.stops[stop] >= 0)
            own.stops[stop]->adopt (*old.stops[static_cast<std::size_t> (map.stops[stop])], map.statesOfStops[stop]);
    for (std::size_t index = 0; index < std::min (own.preamps.size(), old.preamps.size()); ++index)
        own.preamps[index]->adopt (*old.preamps[index]);
}

} // namespace stopwright
