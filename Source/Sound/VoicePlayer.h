// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/KeyEvent.h"
#include "Sound/LinearRamp.h"
#include "Sound/PlayedVoice.h"

#include <array>
#include <cstdint>
#include <span>

namespace stopwright
{

/// The audio thread's side of changing voices: plays one, or two while one fades into the next. Owns neither: what it no
/// longer plays it marks as released.
///
/// The two voices run the same generators in the same phase, so they are added with weights that sum to 1 (equal gain);
/// equal power would swell by 3 dB half way. Each has its own scale and gain, so one of other strength does not come in
/// with the gain of the one before.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class VoicePlayer
{
public:
    static constexpr double fadeSeconds = 0.05;
    static constexpr double gainRampSeconds = 0.02;

    explicit VoicePlayer (double rateHz)
        : fadeStep_ (1.0 / (fadeSeconds * rateHz)),
          playingGain_ (1.0, gainRampSeconds, rateHz),
          leavingGain_ (playingGain_)
    {}

    /// Whether take may be called: no fade is under way.
    bool isReady() const noexcept { return leaving_ == nullptr; }

    /// Fades to another voice from where the one before stands; at once from none, or from one with a fault.
    void take (PlayedVoice& incoming) noexcept;

    /// The division of the playing voice that a keyboard plays, or -1.
    int divisionOf (int keyboard) const noexcept;

    void key (int division, int key, bool down, int frameOffset) noexcept;
    void setSwell (double position) noexcept;
    void releaseAllKeys() noexcept;
    void deliverTurns() noexcept;

    /// The sound re the voice's reference (1 = its rms), times its gain. relative.size() <= Voice::pieceFrames.
    void renderPiece (std::span<double> relative) noexcept;

    /// Of the voice that plays; not of one that leaves.
    bool hasFault() const noexcept;
    bool controlsMove() const noexcept;
    int soundingKeys() const noexcept;

    /// As Voice's, of the voice that plays.
    std::uint64_t takeClips() noexcept;

    /// The highest since the last call.
    double takePeakVolts() noexcept;

private:
    using Piece = std::array<double, Voice::pieceFrames>;

    void releaseLeaving() noexcept;
    void addLeaving (std::span<double> relative) noexcept;

    double fadeStep_; ///< per frame
    PlayedVoice* playing_ = nullptr;
    PlayedVoice* leaving_ = nullptr;
    double fadePlace_ = 0.0; ///< 0 .. 1
    LinearRamp playingGain_;
    LinearRamp leavingGain_;
    double peakVolts_ = 0.0;
    Piece leavingVolts_ {};
};

} // namespace stopwright
