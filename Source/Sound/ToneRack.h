// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/InstrumentCards.h"
#include "Sound/KeyedTone.h"
#include "Tone/GeneratorBank.h"

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace stopwright
{

/// All tones of an instrument: its generators, and one keyed tone for each wave and footage that stops of a division
/// tap, shared by all of them.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class ToneRack
{
public:
    /// Up to maxFrames internal samples at a time, behind up to carryFrames kept. Fails: Error (tuning, waves, keyers).
    ToneRack (const Instrument& instrument,
              const InstrumentCards& cards,
              double internalRateHz,
              int maxFrames,
              int carryFrames);

    /// What each tap of a stop's card draws on. Threading: [control].
    const std::vector<const KeyedTone*>& tonesOf (std::size_t stop) const { return tonesOfStop_[stop]; }

    void key (int division, int key, bool down, int frameOffset) noexcept;

    /// Time goes on by frameCount: every tone renders behind `carry` frames that were kept.
    void render (int carry, int frameCount) noexcept;
    void keep (int from, int count) noexcept;

    std::int64_t time() const noexcept { return time_; }

    /// For each tone, the one of the same division, wave, footage and bus in another rack, or -1. Threading: [control].
    std::vector<int> adoptionMap (const ToneRack& other) const;
    void adopt (const ToneRack& other, const std::vector<int>& map) noexcept;
    void jumpTo (std::int64_t time) noexcept;

private:
    struct Place
    {
        int division = 0;
        std::string divisionName;
        Wave wave;
        Footage footage = Footage::parse ("8");
        int keyedBus = -1; ///< of the instrument; -1 for a wave that none of them carries
        std::string keyedBusName;
    };

    static bool isSame (const Place& a, const Place& b);
    Place placeOf (const Instrument& instrument, const StopTablet& stop, const Tap& tap) const;
    const KeyedTone* toneFor (const Instrument& instrument, const Place& place);
    KeyedTone::Settings settingsFor (const Instrument& instrument, const Place& place) const;

    double rateHz_;
    int maxFrames_;
    int carryFrames_;
    std::vector<Wave> waves_;
    std::unique_ptr<GeneratorBank> generators_;
    std::vector<Place> places_;
    std::vector<std::unique_ptr<KeyedTone>> tones_; ///< one for each place
    std::vector<std::vector<const KeyedTone*>> tonesOfStop_;
    std::int64_t time_ = 0;
};

} // namespace stopwright
