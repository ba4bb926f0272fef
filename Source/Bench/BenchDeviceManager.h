// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_audio_devices/juce_audio_devices.h>

namespace stopwright
{

/// The sound systems of the bench: JACK where a server runs, else ALSA. Threading: message thread.
class BenchDeviceManager : public juce::AudioDeviceManager
{
public:
    void createAudioDeviceTypes (juce::OwnedArray<juce::AudioIODeviceType>& types) override;
};

} // namespace stopwright
