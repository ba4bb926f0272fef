// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_audio_processors/juce_audio_processors.h>

namespace stopwright
{

/// Runs the processor in real time where there is no sound device, so that keys, readings and the meter go on in
/// silence. Threading: start and stop on the message thread.
class SilentClock : private juce::HighResolutionTimer
{
public:
    explicit SilentClock (juce::AudioProcessor& processor);
    ~SilentClock() override;

    void start();
    void stop();

    bool isRunning() const noexcept { return isTimerRunning(); }

private:
    static constexpr double rateHz = 48000.0;
    static constexpr int frames = 480;
    static constexpr int periodMs = 10;

    void hiResTimerCallback() override;

    juce::AudioProcessor& processor_;
    juce::AudioBuffer<float> buffer_ { 2, frames };
    juce::MidiBuffer midi_;
};

} // namespace stopwright
