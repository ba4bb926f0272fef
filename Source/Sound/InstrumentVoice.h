// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/PartKnob.h"
#include "Organ/InstrumentCards.h"
#include "Sound/KeyEvent.h"
#include "Sound/StreamSpec.h"
#include "Sound/Voice.h"

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// A whole instrument sounding: keyboards and couplers, shared generators and keyed tones, every stop's network onto its
/// mixing bus, preamps, outlets, and the swell shoe. Volts out: the sum of all outlets.
///
/// An instrument without mixing buses gets one ideal virtual earth of 47 kilohm with every stop on it, and a main outlet.
/// Threading: as Voice.
class InstrumentVoice : public Voice
{
public:
    /// Fails: Error with a sentence that names the tablet or stage when something cannot be played.
    InstrumentVoice (const Instrument& instrument, const InstrumentCards& cards, const StreamSpec& spec);
    ~InstrumentVoice() override;
    InstrumentVoice (const InstrumentVoice&) = delete;
    InstrumentVoice& operator= (const InstrumentVoice&) = delete;
    InstrumentVoice (InstrumentVoice&&) = delete;
    InstrumentVoice& operator= (InstrumentVoice&&) = delete;

    /// Controls by name. Threading: [control]. Values: draws and couplers 0 or 1; knobs in SI; a mixing resistor in ohms.
    std::optional<int> findDraw (const std::string& tablet) const;
    std::optional<int> findCoupler (const std::string& tablet) const;
    std::optional<int> findOutletSwitch (const std::string& outlet) const;
    std::optional<int> findTremulant (const std::string& outlet) const;
    std::optional<int> findKnob (const std::string& tablet, const PartKnob& knob) const;
    std::optional<int> findTapLevelKnob (const std::string& tablet, const std::string& tap) const;
    std::optional<int> findMixingKnob (const std::string& tablet) const;

    /// What each bit of takeClips stands for, "preamp: stage". Threading: [control].
    const std::vector<std::string>& clipNames() const noexcept;

    int controlCount() const noexcept override;
    void setControl (int index, double value) noexcept override;
    bool controlsMove() const noexcept override;
    int divisionOfChannel (int channel) const noexcept override;
    void key (int division, int key, bool down, int frameOffset) noexcept override;
    void renderPiece (std::span<double> volts) noexcept override;
    void releaseAllKeys() noexcept override;
    int soundingKeys() const noexcept override;
    void setSwell (double position) noexcept override;
    std::uint64_t takeClips() noexcept override;
    bool hasFault() const noexcept override;
    int delayFrames() const noexcept override;
    std::int64_t time() const noexcept override;
    std::unique_ptr<Adoption> prepareAdoption (const Voice& other) const override;
    void adopt (const Voice& other, const Adoption* how) noexcept override;

private:
    struct Implementation;
    std::unique_ptr<Implementation> implementation_;
};

} // namespace stopwright
