// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/InstrumentCards.h"
#include "Sound/OutletMix.h"
#include "Sound/RailPreamp.h"
#include "Sound/RailStop.h"
#include "Sound/StreamSpec.h"
#include "Sound/ToneRack.h"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// Everything of an instrument from its tones to the ear: stops on their buses, preamps, outlets.
///
/// Preamps whose stages with rails take time are lined up with the slowest, so that stops add in phase.
/// Threading: construct, look up and plan on [control]; noexcept functions on [audio], no allocation, no lock.
class RailRack
{
public:
    /// Tones are worked off in blocks of so many internal samples.
    static constexpr int block = RailStop::length;

    /// Fails: Error with a sentence that names the tablet or stage when something cannot be played.
    RailRack (const Instrument& instrument,
              const InstrumentCards& cards,
              const ToneRack& tones,
              const StreamSpec& spec);

    /// Of the instrument's stops; null for one that cannot sound: blank, or on no bus.
    RailStop* stop (std::size_t index) const noexcept { return stops_[index].get(); }

    OutletStage& outlet (std::size_t index) noexcept { return outlets_[index]->stage(); }

    std::size_t outletCount() const noexcept { return outlets_.size(); }

    /// Works off whole blocks from the front of the tones.
    void playBlocks (int blockCount) noexcept;

    /// Writes the coming device frames: the sum of all outlets.
    void render (std::span<double> volts) noexcept;

    /// What each bit of takeClips stands for, "preamp: stage". Threading: [control].
    const std::vector<std::string>& clipNames() const noexcept { return clipNames_; }

    std::uint64_t takeClips() noexcept;

    /// From a tone to its effect at the output.
    int delayFrames() const noexcept { return delayFrames_; }

    /// For each stop, preamp and outlet the namesake in another rack, or -1.
    struct Adoption
    {
        std::vector<int> stops, preamps, outlets;
        std::vector<std::vector<int>> statesOfStops;
    };

    Adoption planAdoption (const RailRack& other) const;

    /// Goes on where `other` is, with `carry` tone frames of a block begun.
    void adopt (const RailRack& other, const Adoption& plan, int carry) noexcept;

    /// Begins with nothing under way but so many tone frames.
    void begin (int carry) noexcept;

private:
    void addStops (const Instrument& instrument, const InstrumentCards& cards, const ToneRack& tones);
    void addPreamps (const Instrument& instrument, const InstrumentCards& cards, int maxFrames);
    void addOutlets (const Instrument& instrument, const StreamSpec& spec);

    double internalHz_;
    std::vector<std::string> stopNames_, preampNames_, outletNames_;
    std::vector<std::unique_ptr<RailStop>> stops_;
    std::vector<std::unique_ptr<RailPreamp>> preamps_;
    std::vector<std::size_t> outletOfPreamp_;
    std::vector<int> offsetOfPreamp_; ///< what it waits for the slowest
    std::vector<std::unique_ptr<OutletMix>> outlets_;
    std::vector<std::string> clipNames_;
    int delayFrames_ = 0;
};

} // namespace stopwright
