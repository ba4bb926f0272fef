// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/VoicePlayer.h"
#include "Sound/KeyEvent.h"
#include "Sound/KeyHolders.h"
#include "Sound/KeyQueue.h"
#include "Sound/LevelMeter.h"
#include "Sound/ListeningStage.h"
#include "Sound/Telemetry.h"

#include <array>
#include <atomic>
#include <span>

namespace stopwright
{

/// What the control threads leave for the audio thread to find: everything they share but the knobs' letter boxes.
struct Mailbox
{
    std::atomic<PlayedVoice*> nextCard { nullptr }; ///< the latest card set and not taken yet; both sides exchange it
    std::atomic<double> levelDb { 0.0 };
    KeyQueue keys;
};

/// The audio thread's half of the engine for one stream: takes what is in the mailbox, plays, and brings it to the ear.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class Kernel
{
public:
    Kernel (const StreamSpec& spec, Mailbox& mailbox);

    void process (std::span<const KeyEvent> events, std::span<float* const> channels, int frameCount) noexcept;

    /// Readings since the last call, load excepted.
    Telemetry takeReadings() noexcept;

    int stageLatencyFrames() const noexcept;

private:
    void takeCard() noexcept;
    void takeKeys() noexcept;
    /// The two sides that hold keys, each without a say in what the other holds.
    enum class Side
    {
        events, ///< what comes with the block, as MIDI does
        control ///< what comes through the mailbox, as the window's keys do
    };

    void key (int key, Side side, bool down, int frameOffset) noexcept;
    void playPiece (std::span<float* const> channels, int start, int count) noexcept;

    double rateHz_;
    Mailbox& mailbox_;
    VoicePlayer player_;
    ListeningStage stage_;
    LevelMeter meter_;
    KeyHolders holders_;
    int lastKey_ = -1;
    std::array<double, CardVoice::pieceFrames> relative_ {};
    std::array<float, CardVoice::pieceFrames> heard_ {};
};

} // namespace stopwright
