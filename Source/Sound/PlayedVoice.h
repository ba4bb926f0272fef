// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/LatestValues.h"
#include "Sound/Voice.h"

#include <atomic>
#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace stopwright
{

/// A voice on its way through the engine: the voice, the letter boxes of its controls, its scale and gain, and how to take over
/// from each voice it may find playing. Made and freed on [control]; in between the audio thread has it to itself, but
/// for the letter boxes and wasReleased.
struct PlayedVoice
{
    /// `older` are the voices that may be playing when this one is taken. Threading: [control].
    PlayedVoice (std::unique_ptr<Voice> played,
                 double referenceVolts,
                 std::span<const std::unique_ptr<PlayedVoice>> older = {});

    /// Puts a value into a control's letter box; false when there is no such control. Threading: one [control] thread
    /// at a time.
    bool turn (std::optional<int> controlIndex, double value) noexcept;

    /// A gain that goes with this voice whatever is turned; the audio thread runs to it. Threading: put on one [control]
    /// thread at a time, read on [any].
    void setGain (double ratio) noexcept { gain_.store (ratio, std::memory_order_relaxed); }

    double gain() const noexcept { return gain_.load (std::memory_order_relaxed); }

    /// Turns what was turned on another playing of the same voice, its gain too. Threading: [control]
    void repeatTurnsOf (const PlayedVoice& other) noexcept;

    /// Lets the voice have what is in the letter boxes. Threading: [audio]
    void deliverTurns() noexcept;

    /// Goes on where `other` is. Threading: [audio]
    void takeOverFrom (const PlayedVoice& other) noexcept;

    struct Takeover
    {
        const PlayedVoice* from = nullptr;
        std::unique_ptr<Voice::Adoption> adoption;
    };

    std::unique_ptr<Voice> voice; ///< never null
    LatestValues controls;
    double referenceVolts;
    std::vector<Takeover> takeovers;
    std::atomic<bool> wasReleased { false }; ///< the audio thread's last word: it will not touch this again

private:
    std::atomic<double> gain_ { 1.0 };
};

} // namespace stopwright
