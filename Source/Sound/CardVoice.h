// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/PartKnob.h"
#include "Organ/KeySource.h"
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

/// One card sounding: all keys' waves from the shared generators through the keyers onto the taps, the sum of all
/// sounding keys through the card's one network, and down to the device rate. Volts out. It has one keyboard, which
/// every MIDI channel plays, no swell shoe and no stage that clips. Without the resting volts of a card with devices (see
/// CardNetwork).
/// Threading: as Voice.
class CardVoice : public Voice
{
public:
    /// Fails: Error with a sentence when the card's network is not sound.
    CardVoice (const Card& card, const KeySource& keySource, const StreamSpec& spec);
    ~CardVoice() override;
    CardVoice (const CardVoice&) = delete;
    CardVoice& operator= (const CardVoice&) = delete;
    CardVoice (CardVoice&&) = delete;
    CardVoice& operator= (CardVoice&&) = delete;

    /// Controls: knobs of parts in SI, ramped over LinearCircuit::rampSeconds, and a tap's volts peak to peak. Nothing
    /// when there is no such number. Threading: [control].
    std::optional<int> findKnob (const PartKnob& knob) const;
    std::optional<int> findTapLevelKnob (const std::string& tapName) const;

    /// Writes `volts` (any length; longer than pieceFrames runs in pieces). Events outside the block are taken at its
    /// ends; keys outside the compass are ignored. Threading: [audio].
    void process (std::span<const KeyEvent> events, std::span<double> volts) noexcept;

    int controlCount() const noexcept override;
    void setControl (int index, double value) noexcept override;
    bool controlsMove() const noexcept override;

    int divisionOfChannel (int) const noexcept override { return 0; }

    void key (int division, int key, bool down, int frameOffset) noexcept override;
    void renderPiece (std::span<double> volts) noexcept override;
    void releaseAllKeys() noexcept override;
    int soundingKeys() const noexcept override;

    void setSwell (double) noexcept override {}

    std::uint64_t takeClips() noexcept override { return 0; }

    bool hasFault() const noexcept override;
    int delayFrames() const noexcept override;
    std::int64_t time() const noexcept override;
    std::unique_ptr<Adoption> prepareAdoption (const Voice& other) const override;
    void adopt (const Voice& other, const Adoption* how) noexcept override;

    double latencySeconds() const noexcept;
    void reset() noexcept;

private:
    struct Implementation;
    std::unique_ptr<Implementation> implementation_;
};

} // namespace stopwright
