// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/PartKnob.h"
#include "Organ/KeySource.h"
#include "Sound/KeyEvent.h"
#include "Sound/StreamSpec.h"

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// One card sounding: all keys' waves from the shared generators through the keyers onto the taps, the sum of all
/// sounding keys through the card's one network, and down to the device rate. Volts out, without the resting volts of a
/// card with devices (see CardNetwork).
/// Threading: construct, destroy and look up on [control]; noexcept functions on [audio], no allocation, no lock.
class CardVoice
{
public:
    /// The kernel runs in pieces of at most so many device frames, whatever the device's block is.
    static constexpr int pieceFrames = 64;

    /// An output beyond this is a network running away, and taken for a fault.
    static constexpr double runawayVolts = 1e6;

    /// Fails: Error with a sentence when the card's network is not sound.
    CardVoice (const Card& card, const KeySource& keySource, const StreamSpec& spec);
    ~CardVoice();
    CardVoice (const CardVoice&) = delete;
    CardVoice& operator= (const CardVoice&) = delete;
    CardVoice (CardVoice&&) = delete;
    CardVoice& operator= (CardVoice&&) = delete;

    /// Knobs of parts, and a tap's volts peak to peak by tapLevelKnob. Nothing when there is no such number.
    std::optional<int> findKnob (const PartKnob& knob) const;
    std::optional<int> findTapLevelKnob (const std::string& tapName) const;

    /// Ramps a knob to `value` over LinearCircuit::rampSeconds; a value that is not finite is ignored.
    /// Threading: [audio].
    void setKnobTarget (int knobIndex, double value) noexcept;
    bool knobsMoving() const noexcept;

    /// Adds nothing, writes `volts` (any length; longer than pieceFrames runs in pieces). Events outside the block are
    /// taken at its ends; keys outside the compass are ignored. Threading: [audio].
    void process (std::span<const KeyEvent> events, std::span<double> volts) noexcept;

    /// The same in its two halves: what happens in the coming piece, then the piece (volts.size() <= pieceFrames).
    void key (int key, bool down, int frameOffset) noexcept;
    void renderPiece (std::span<double> volts) noexcept;

    void releaseAllKeys() noexcept;
    int soundingKeys() const noexcept;

    /// Generators run on while another voice plays: takes over time, held keys and the network's charge of `other`
    /// as far as names agree, so that a changed card goes on where the old one is. prepareAdoption on [control].
    /// Of a voice with a fault only time and keys are taken.
    struct Adoption
    {
        std::vector<int> states;
        std::vector<int> taps; ///< per tap, the one of the same name in the other voice, or -1
    };

    Adoption prepareAdoption (const CardVoice& other) const;
    void adopt (const CardVoice& other, const Adoption& adoption) noexcept;

    /// Whether an output was not finite or beyond runawayVolts since construction or reset. Threading: [audio].
    bool hasFault() const noexcept;

    /// From a key going down to its effect at the output: a whole number of device frames.
    int delayFrames() const noexcept;
    double latencySeconds() const noexcept;
    void reset() noexcept;

private:
    struct Implementation;
    std::unique_ptr<Implementation> implementation_;
};

} // namespace stopwright
