// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchDeviceManager.h"

namespace stopwright
{

void BenchDeviceManager::createAudioDeviceTypes (juce::OwnedArray<juce::AudioIODeviceType>& types)
{
    if (auto* jack = juce::AudioIODeviceType::createAudioIODeviceType_JACK())
        types.add (jack);
    if (auto* alsa = juce::AudioIODeviceType::createAudioIODeviceType_ALSA())
        types.add (alsa);
}

} // namespace stopwright
