// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/InstrumentVoice.h"

#include "Organ/PlayableInstrument.h"
#include "Sound/KeyDesk.h"
#include "Sound/RailControls.h"
#include "Sound/RailRack.h"
#include "Sound/ToneRack.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stopwright
{

namespace
{

constexpr int block = RailRack::block;
constexpr int mostCarry = block - 1;

} // namespace

struct InstrumentVoice::Implementation
{
    Implementation (Instrument playable, const InstrumentCards& cards, const StreamSpec& spec)
        : instrument (playableInstrument (std::move (playable))),
          factor (internalFactor (spec)),
          desk (instrument),
          tones (instrument, cards, spec.deviceRateHz * factor, pieceFrames * factor, mostCarry),
          rack (instrument, cards, tones, spec),
          controls (instrument, rack)
    {}

    void soundKey (int division, int key, bool down, int frameOffset) noexcept
    {
        tones.key (division, key, down, frameOffset * factor);
    }

    void turnTremulant (int index, double value) noexcept
    {
        const auto outlet = controls.tremulantOutletOf (index);
        auto& settings = instrument.outlets[outlet].tremulant;
        (controls.isDepth (index) ? settings.depth : settings.rateHz) = value;
        rack.outlet (outlet).setTremulant (settings);
    }

    Instrument instrument;
    int factor; ///< internal samples of a device frame
    KeyDesk desk;
    ToneRack tones;
    RailRack rack;
    RailControls controls;
    int carry = 0; ///< tone frames that wait for their block to be full
    bool hasFault = false;
};

InstrumentVoice::InstrumentVoice (const Instrument& instrument, const InstrumentCards& cards, const StreamSpec& spec)
    : implementation_ (std::make_unique<Implementation> (instrument, cards, spec))
{}

InstrumentVoice::~InstrumentVoice() = default;

std::optional<int> InstrumentVoice::findDraw (const std::string& tablet) const
{
    return implementation_->controls.findDraw (tablet);
}

std::optional<int> InstrumentVoice::findCoupler (const std::string& tablet) const
{
    return implementation_->controls.findCoupler (tablet);
}

std::optional<int> InstrumentVoice::findOutletSwitch (const std::string& outlet) const
{
    return implementation_->controls.findOutletSwitch (outlet);
}

std::optional<int> InstrumentVoice::findTremulant (const std::string& outlet) const
{
    return implementation_->controls.findTremulant (outlet);
}

std::optional<int> InstrumentVoice::findKnob (const std::string& tablet, const PartKnob& knob) const
{
    return implementation_->controls.findKnob (tablet, knob);
}

std::optional<int> InstrumentVoice::findTapLevelKnob (const std::string& tablet, const std::string& tap) const
{
    return implementation_->controls.findTapLevelKnob (tablet, tap);
}

std::optional<int> InstrumentVoice::findMixingKnob (const std::string& tablet) const
{
    return implementation_->controls.findMixingKnob (tablet);
}

const std::vector<std::string>& InstrumentVoice::clipNames() const noexcept
{
    return implementation_->rack.clipNames();
}

int InstrumentVoice::controlCount() const noexcept
{
    return implementation_->controls.count();
}

void InstrumentVoice::setControl (int index, double value) noexcept
{
    auto& own = *implementation_;
    if (index < 0 || index >= own.controls.count() || ! std::isfinite (value))
        return;
    const bool isOn = value >= 0.5;
    if (own.controls.isCoupler (index))
        own.desk.drawCoupler (index, isOn,
                              [&own] (int division, int key, bool down) { own.soundKey (division, key, down, 0); });
    else if (own.controls.isOutlet (index))
        own.rack.outlet (static_cast<std::size_t> (own.controls.outletOf (index))).setOn (isOn);
    else if (own.controls.isTremulant (index))
        own.turnTremulant (index, value);
    else
        own.controls.setStop (index, value);
}

bool InstrumentVoice::controlsMove() const noexcept
{
    return implementation_->controls.stopsMove();
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
    own.rack.playBlocks (blockCount);
    own.carry += frames - blockCount * block;
    own.tones.keep (blockCount * block, own.carry);
    own.rack.render (volts);

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
    for (std::size_t outlet = 0; outlet < implementation_->rack.outletCount(); ++outlet)
        implementation_->rack.outlet (outlet).setSwell (position);
}

std::uint64_t InstrumentVoice::takeClips() noexcept
{
    return implementation_->rack.takeClips();
}

bool InstrumentVoice::hasFault() const noexcept
{
    return implementation_->hasFault;
}

int InstrumentVoice::delayFrames() const noexcept
{
    return implementation_->rack.delayFrames();
}

std::int64_t InstrumentVoice::time() const noexcept
{
    return implementation_->tones.time();
}

namespace
{

struct InstrumentAdoption : Voice::Adoption
{
    std::vector<int> tones;
    RailRack::Adoption rack;
};

} // namespace

std::unique_ptr<Voice::Adoption> InstrumentVoice::prepareAdoption (const Voice& other) const
{
    const auto* const instrument = dynamic_cast<const InstrumentVoice*> (&other);
    if (instrument == nullptr)
        return nullptr;
    auto adoption = std::make_unique<InstrumentAdoption>();
    adoption->tones = implementation_->tones.adoptionMap (instrument->implementation_->tones);
    adoption->rack = implementation_->rack.planAdoption (instrument->implementation_->rack);
    return adoption;
}

void InstrumentVoice::adopt (const Voice& other, const Adoption* how) noexcept
{
    auto& own = *implementation_;
    own.tones.jumpTo (other.time());
    if (how == nullptr)
        return;

    const auto& adoption = static_cast<const InstrumentAdoption&> (*how);
    const auto& old = *static_cast<const InstrumentVoice&> (other).implementation_;
    own.desk.adopt (old.desk);
    own.carry = old.carry;
    own.tones.adopt (old.tones, adoption.tones);
    for (int division = 0; division < own.desk.divisionCount(); ++division)
        for (int key = 0; key < HeldKeys::keyCount; ++key)
            own.soundKey (division, key, own.desk.sounds (division, key), 0);
    if (old.hasFault)
        own.rack.begin (own.carry);
    else
        own.rack.adopt (old.rack, adoption.rack, own.carry);
}

} // namespace stopwright
