// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/KeyEvent.h"
#include "Sound/KeyHolders.h"
#include "Sound/KeyQueue.h"
#include "Sound/LevelMeter.h"
#include "Sound/ListeningStage.h"
#include "Sound/StreamSpec.h"
#include "Sound/Telemetry.h"
#include "Sound/VoicePlayer.h"

#include <array>
#include <atomic>
#include <span>

namespace stopwright
{

/// What the control threads leave for the audio thread to find: everything they share but the knobs' letter boxes.
struct Mailbox
{
    std::atomic<PlayedVoice*> nextVoice { nullptr }; ///< the latest set and not taken yet; both sides exchange it
    std::atomic<double> levelDb { 0.0 };
    std::atomic<double> swell { 1.0 }; ///< 0 closed .. 1 open
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
    void takeVoice() noexcept;
    void agreeOnKeys() noexcept;
    void takeKeys() noexcept;
    bool isHeldIn (int division, int key) const noexcept;
    void key (int key, int keyboard, bool down, int frameOffset) noexcept;
    void playPiece (std::span<float* const> channels, int start, int count) noexcept;

    double rateHz_;
    Mailbox& mailbox_;
    VoicePlayer player_;
    ListeningStage stage_;
    LevelMeter meter_;
    KeyHolders holders_; ///< by keyboard
    int lastKey_ = -1;
    std::array<double, Voice::pieceFrames> relative_ {};
    std::array<float, Voice::pieceFrames> heard_ {};
};

} // namespace stopwright
