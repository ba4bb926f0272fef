// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchDeviceManager.h"
#include "Bench/BenchProcessor.h"
#include "Bench/DeviceSearch.h"
#include "Bench/MidiInputs.h"
#include "Bench/SilentClock.h"

#include <juce_audio_utils/juce_audio_utils.h>

#include <functional>

namespace stopwright
{

/// Joins the processor to a sound device and to every MIDI input that is or comes to be plugged in; the keys of one that
/// is pulled out are let go.
/// Threading: message thread.
class AudioHost : private juce::Timer
{
public:
    explicit AudioHost (BenchProcessor& processor);
    ~AudioHost() override;

    /// Opens the device of the last run, else the first there is, as soon as the sound systems answer. `onStarted` is then
    /// told an empty string, or a sentence that says why there is no sound and what to do. Called again while it waits, the
    /// newer state and `onStarted` count, and the older are forgotten.
    void start (std::unique_ptr<juce::XmlElement> savedState, std::function<void (const juce::String&)> onStarted);

    /// As AudioDeviceManager's, for the set-up page: system ("JACK", "ALSA") and the name of an output of it.
    juce::String choose (const juce::String& system, const juce::String& output);
    juce::StringArray systems();
    juce::StringArray outputsOf (const juce::String& system);

    /// Plays on without a device.
    void goSilent();

    bool hasDevice() const;

    bool isSilent() const noexcept { return silentClock_.isRunning(); }

    /// "JACK system, 48 kHz, 256 frames (5.3 ms), 0 dropouts".
    juce::String statusText() const;

    juce::String currentSystem() const;
    juce::String currentOutput() const;
    juce::StringArray midiInputs() const;

    /// Which MIDI inputs are heard, by name: all but those given, also when they are plugged in later.
    void setUnheardMidi (const juce::StringArray& names);

    const juce::StringArray& unheardMidi() const noexcept { return unheardMidi_; }

    std::unique_ptr<juce::XmlElement> state() const;

    /// Told, with a sentence, when the device went away while playing.
    std::function<void (const juce::String&)> onDeviceLost;

    /// Told, with a sentence, when a sound server lets the bench wait.
    std::function<void (const juce::String&)> onSlowServer;

    /// The sentence for when there is no device.
    static juce::String noDeviceSentence();

    /// That sentence, or while a sound server lets the bench wait, the one for that.
    juce::String whyNoDevice() const;

private:
    static constexpr int midiPollMs = 2000;

    void timerCallback() override;
    void enableMidiInputs();
    juce::String afterOpening (const juce::String& error);

    BenchProcessor& processor_;
    BenchDeviceManager devices_;
    juce::AudioProcessorPlayer player_;
    MidiInputs midiInputs_ { player_ };
    SilentClock silentClock_;
    DeviceSearch search_;
    juce::StringArray enabledInputs_;
    juce::StringArray unheardMidi_;
    bool isAttached_ = false;
};

} // namespace stopwright
