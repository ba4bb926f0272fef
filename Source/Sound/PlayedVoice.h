// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/CardVoice.h"
#include "Sound/LatestValues.h"

#include <atomic>
#include <memory>
#include <span>
#include <vector>

namespace stopwright
{

/// A card on its way through the engine: its voice, the letter boxes of its knobs, its scale, and how to take over from
/// each card it may find playing. Made and freed on [control]; in between the audio thread has it to itself, but for
/// the letter boxes and wasReleased.
struct PlayedVoice
{
    /// `older` are the cards that may be playing when this one is taken. Threading: [control]. Fails: Error.
    PlayedVoice (const Card& card,
                const KeySource& keySource,
                const StreamSpec& spec,
                double referenceVolts,
                std::span<const std::unique_ptr<PlayedVoice>> older = {});

    /// Puts a value into a knob's letter box. Threading: one [control] thread at a time.
    bool turn (std::optional<int> knobIndex, double value) noexcept;

    /// Turns what was turned on another playing of the same card. Threading: [control]
    void repeatTurnsOf (const PlayedVoice& other) noexcept;

    /// Lets the voice have what is in the letter boxes. Threading: [audio]
    void deliverTurns() noexcept;

    /// Goes on where `other` is. Threading: [audio]
    void takeOverFrom (const PlayedVoice& other) noexcept;

    struct Takeover
    {
        const PlayedVoice* from = nullptr;
        CardVoice::Adoption adoption;
    };

    CardVoice voice;
    LatestValues knobs;
    double referenceVolts;
    std::vector<Takeover> takeovers;
    std::atomic<bool> wasReleased { false }; ///< the audio thread's last word: it will not touch this again
};

} // namespace stopwright
