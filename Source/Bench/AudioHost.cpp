// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/AudioHost.h"

namespace stopwright
{

namespace
{

constexpr int outputChannels = 2;

/// Of the sound systems only JACK has a server that can keep whoever asks waiting.
void askSoundServer()
{
    const std::unique_ptr<juce::AudioIODeviceType> jack (juce::AudioIODeviceType::createAudioIODeviceType_JACK());
    if (jack != nullptr)
        jack->scanForDevices();
}

} // namespace

AudioHost::AudioHost (BenchProcessor& processor) : processor_ (processor), silentClock_ (processor) {}

AudioHost::~AudioHost()
{
    stopTimer();
    silentClock_.stop();
    devices_.removeMidiInputDeviceCallback ({}, &midiInputs_);
    devices_.removeAudioCallback (&player_);
    player_.setProcessor (nullptr);
    devices_.closeAudioDevice();
}

juce::String AudioHost::noDeviceSentence()
{
    return "The bench plays on no sound device: no JACK server answered when it was asked, or the device went away, and no "
           "sound card that is free was found under ALSA. Start a JACK server, connect a sound card, or close the program "
           "that holds it, then press \"Try again\" or choose an output below. Or go on silent: keys, knobs and readings "
           "work, only nothing is heard.";
}

juce::String AudioHost::whyNoDevice() const
{
    return search_.isWaiting()
               ? "The JACK server does not answer yet. The window can be used meanwhile; sound begins as soon "
                 "as it answers. If it does not, stop that server and start it again."
               : noDeviceSentence();
}

void AudioHost::start (std::unique_ptr<juce::XmlElement> savedState,
                       std::function<void (const juce::String&)> onStarted)
{
    const auto open =
        [this, saved = std::shared_ptr<juce::XmlElement> (std::move (savedState)), told = std::move (onStarted)]
    {
        silentClock_.stop();
        const auto error = devices_.initialise (0, outputChannels, saved.get(), true);
        startTimer (midiPollMs);
        told (afterOpening (error));
    };
    const auto tellSlow = [this]
    {
        if (onSlowServer)
            onSlowServer (whyNoDevice());
    };
    search_.begin (askSoundServer, { tellSlow, open });
}

juce::String AudioHost::choose (const juce::String& system, const juce::String& output)
{
    if (search_.isWaiting())
        return whyNoDevice();
    silentClock_.stop();
    devices_.setCurrentAudioDeviceType (system, true);
    auto setup = devices_.getAudioDeviceSetup();
    setup.outputDeviceName = output;
    setup.inputDeviceName = {};
    setup.useDefaultOutputChannels = true;
    return afterOpening (devices_.setAudioDeviceSetup (setup, true));
}

juce::String AudioHost::afterOpening (const juce::String& error)
{
    if (! hasDevice())
        return error.isEmpty() ? noDeviceSentence() : noDeviceSentence() + " (" + error + ")";

    if (! isAttached_)
    {
        player_.setProcessor (&processor_);
        devices_.addAudioCallback (&player_);
        devices_.addMidiInputDeviceCallback ({}, &midiInputs_);
        isAttached_ = true;
    }
    enableMidiInputs();
    return {};
}

void AudioHost::goSilent()
{
    if (hasDevice())
        return;
    if (isAttached_)
    {
        devices_.removeAudioCallback (&player_);
        player_.setProcessor (nullptr);
        isAttached_ = false;
    }
    silentClock_.start();
}

bool AudioHost::hasDevice() const
{
    return devices_.getCurrentAudioDevice() != nullptr;
}

juce::StringArray AudioHost::systems()
{
    if (search_.isWaiting())
        return {}; // to list them the framework asks them all
    juce::StringArray names;
    for (auto* type : devices_.getAvailableDeviceTypes())
        names.add (type->getTypeName());
    return names;
}

juce::StringArray AudioHost::outputsOf (const juce::String& system)
{
    if (search_.isWaiting())
        return {};
    for (auto* type : devices_.getAvailableDeviceTypes())
    {
        if (type->getTypeName() == system)
        {
            type->scanForDevices();
            return type->getDeviceNames (false);
        }
    }
    return {};
}

juce::String AudioHost::currentSystem() const
{
    return devices_.getCurrentAudioDeviceType();
}

juce::String AudioHost::currentOutput() const
{
    return devices_.getAudioDeviceSetup().outputDeviceName;
}

juce::StringArray AudioHost::midiInputs() const
{
    juce::StringArray names;
    for (const auto& input : juce::MidiInput::getAvailableDevices())
        names.add (input.name);
    return names;
}

void AudioHost::setUnheardMidi (const juce::StringArray& names)
{
    unheardMidi_ = names;
    for (const auto& input : juce::MidiInput::getAvailableDevices())
        midiInputs_.setHeard (input.identifier, ! names.contains (input.name));
}

juce::String AudioHost::statusText() const
{
    auto* device = devices_.getCurrentAudioDevice();
    if (device == nullptr && search_.isWaiting())
        return "Waiting for the sound server.";
    if (device == nullptr)
        return isSilent() ? "No sound device: running silent. \"Audio\" tries again." : "No sound device.";

    const double rate = device->getCurrentSampleRate();
    const int frames = device->getCurrentBufferSizeSamples();
    const int dropouts = std::max (0, devices_.getXRunCount());
    return device->getTypeName() + " " + device->getName() + ", "
           + juce::String (rate / 1000.0, rate == 44100.0 ? 1 : 0) + " kHz, " + juce::String (frames) + " frames ("
           + juce::String (1000.0 * frames / rate, 1) + " ms), " + juce::String (dropouts)
           + (dropouts == 1 ? " dropout" : " dropouts");
}

std::unique_ptr<juce::XmlElement> AudioHost::state() const
{
    return devices_.createStateXml();
}

void AudioHost::enableMidiInputs()
{
    juce::StringArray present;
    for (const auto& input : juce::MidiInput::getAvailableDevices())
    {
        present.add (input.identifier);
        midiInputs_.setHeard (input.identifier, ! unheardMidi_.contains (input.name));
        if (! devices_.isMidiInputDeviceEnabled (input.identifier))
            devices_.setMidiInputDeviceEnabled (input.identifier, true);
    }

    // One that was pulled out is closed, so that it is opened afresh when it comes back.
    for (const auto& identifier : enabledInputs_)
    {
        if (present.contains (identifier))
            continue;
        devices_.setMidiInputDeviceEnabled (identifier, false);
        midiInputs_.inputGone (identifier);
    }
    enabledInputs_ = present;
}

void AudioHost::timerCallback()
{
    enableMidiInputs();

    auto* device = devices_.getCurrentAudioDevice();
    if (device != nullptr && ! device->isOpen())
    {
        devices_.closeAudioDevice();
        if (onDeviceLost)
            onDeviceLost ("The sound device went away. Start it again and choose it under \"Audio\", or go on silent.");
    }
}

} // namespace stopwright
