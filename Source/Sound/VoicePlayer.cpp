// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/VoicePlayer.h"

#include "Sound/LevelEnds.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stopwright
{

namespace
{

double peakOf (std::span<const double> samples) noexcept
{
    double peak = 0.0;
    for (const double sample : samples)
        peak = std::max (peak, std::abs (sample));
    return peak;
}

} // namespace

void VoicePlayer::take (PlayedVoice& incoming) noexcept
{
    leaving_ = std::exchange (playing_, &incoming);
    leavingGain_ = playingGain_;
    playingGain_.setTarget (incoming.gain());
    playingGain_.finish();
    if (leaving_ == nullptr)
        return;

    incoming.takeOverFrom (*leaving_);
    fadePlace_ = 0.0;
    if (leaving_->voice->hasFault())
        releaseLeaving();
}

void VoicePlayer::releaseLeaving() noexcept
{
    leaving_->wasReleased.store (true, std::memory_order_release);
    leaving_ = nullptr;
}

int VoicePlayer::divisionOf (int keyboard) const noexcept
{
    if (keyboard >= Keyboard::midiChannels)
        return keyboard - Keyboard::midiChannels;
    return playing_ != nullptr ? playing_->voice->divisionOfChannel (keyboard + 1) : -1;
}

void VoicePlayer::key (int division, int key, bool down, int frameOffset) noexcept
{
    for (PlayedVoice* const played : { playing_, leaving_ })
        if (played != nullptr)
            played->voice->key (division, key, down, frameOffset);
}

void VoicePlayer::setSwell (double position) noexcept
{
    for (PlayedVoice* const played : { playing_, leaving_ })
        if (played != nullptr)
            played->voice->setSwell (position);
}

std::uint64_t VoicePlayer::takeClips() noexcept
{
    return playing_ != nullptr ? playing_->voice->takeClips() : 0;
}

void VoicePlayer::releaseAllKeys() noexcept
{
    for (PlayedVoice* const played : { playing_, leaving_ })
        if (played != nullptr)
            played->voice->releaseAllKeys();
}

void VoicePlayer::deliverTurns() noexcept
{
    if (playing_ != nullptr)
        playing_->deliverTurns();
}

void VoicePlayer::renderPiece (std::span<double> relative) noexcept
{
    if (playing_ == nullptr)
    {
        std::fill (relative.begin(), relative.end(), 0.0);
        return;
    }

    playing_->voice->renderPiece (relative);
    peakVolts_ = std::max (peakVolts_, peakOf (relative));
    for (double& sample : relative)
        sample /= playing_->referenceVolts;
    playingGain_.setTarget (playing_->gain());
    playingGain_.apply (std::span<const double> (relative), relative);
    if (leaving_ != nullptr)
        addLeaving (relative);
}

void VoicePlayer::addLeaving (std::span<double> relative) noexcept
{
    const auto volts = std::span (leavingVolts_).first (relative.size());
    leaving_->voice->renderPiece (volts);
    if (leaving_->voice->hasFault())
    {
        releaseLeaving();
        return;
    }

    leavingGain_.apply (std::span<const double> (volts), volts);
    for (std::size_t frame = 0; frame < relative.size(); ++frame)
    {
        fadePlace_ = std::min (1.0, fadePlace_ + fadeStep_);
        const double old = volts[frame] / leaving_->referenceVolts;
        relative[frame] = old + withLevelEnds (fadePlace_) * (relative[frame] - old);
    }
    if (fadePlace_ >= 1.0)
        releaseLeaving();
}

bool VoicePlayer::hasFault() const noexcept
{
    return playing_ != nullptr && playing_->voice->hasFault();
}

bool VoicePlayer::controlsMove() const noexcept
{
    return playing_ != nullptr && playing_->voice->controlsMove();
}

int VoicePlayer::soundingKeys() const noexcept
{
    return playing_ != nullptr ? playing_->voice->soundingKeys() : 0;
}

double VoicePlayer::takePeakVolts() noexcept
{
    return std::exchange (peakVolts_, 0.0);
}

} // namespace stopwright
