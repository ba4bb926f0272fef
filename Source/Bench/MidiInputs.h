// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_audio_devices/juce_audio_devices.h>

#include <bitset>
#include <map>
#include <mutex>
#include <set>

namespace stopwright
{

/// Stands between the MIDI inputs and what plays them, and remembers which keys each input holds, so that the keys of
/// one that is pulled out are let go.
/// Threading: messages on the inputs' threads, everything else on the message thread; never the audio thread.
class MidiInputs : public juce::MidiInputCallback
{
public:
    explicit MidiInputs (juce::MidiInputCallback& player) : player_ (player) {}

    void handleIncomingMidiMessage (juce::MidiInput* source, const juce::MidiMessage& message) override;

    /// The same, by the identifier of the input.
    void take (const juce::String& identifier, const juce::MidiMessage& message);

    /// Lets go what this input holds and no other one does.
    void inputGone (const juce::String& identifier);

    /// Whether an input is passed on, as all are at first. One that is no longer heard lets go what it holds.
    void setHeard (const juce::String& identifier, bool isHeard);

private:
    static constexpr std::size_t keyCount = 128;
    static constexpr std::size_t channelCount = 16;
    using Keys = std::bitset<keyCount * channelCount>;

    void letGo (const juce::String& identifier);

    juce::MidiInputCallback& player_;
    std::mutex mutex_;
    std::map<juce::String, Keys> held_; ///< by identifier
    std::set<juce::String> unheard_;    ///< identifiers
};

} // namespace stopwright
