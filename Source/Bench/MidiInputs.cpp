// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/MidiInputs.h"

#include "Sound/HeldKeys.h"

namespace stopwright
{

namespace
{

std::size_t placeOf (int channel, int key)
{
    const int place = (channel - 1) * HeldKeys::keyCount + key;
    return static_cast<std::size_t> (place);
}

} // namespace

void MidiInputs::handleIncomingMidiMessage (juce::MidiInput* source, const juce::MidiMessage& message)
{
    take (source != nullptr ? source->getIdentifier() : juce::String(), message);
}

void MidiInputs::take (const juce::String& identifier, const juce::MidiMessage& message)
{
    const std::scoped_lock lock (mutex_);
    if (unheard_.contains (identifier))
        return;
    auto& held = held_[identifier];
    if (message.isNoteOnOrOff())
    {
        held[placeOf (message.getChannel(), message.getNoteNumber())] = message.isNoteOn();
    }
    else if (message.isAllNotesOff() || message.isAllSoundOff())
    {
        for (int key = 0; key < static_cast<int> (keyCount); ++key)
            held[placeOf (message.getChannel(), key)] = false;
    }
    player_.handleIncomingMidiMessage (nullptr, message);
}

void MidiInputs::inputGone (const juce::String& identifier)
{
    const std::scoped_lock lock (mutex_);
    letGo (identifier);
}

void MidiInputs::setHeard (const juce::String& identifier, bool isHeard)
{
    const std::scoped_lock lock (mutex_);
    if (isHeard)
        unheard_.erase (identifier);
    else if (unheard_.insert (identifier).second)
        letGo (identifier);
}

/// With the lock held.
void MidiInputs::letGo (const juce::String& identifier)
{
    const auto gone = held_.find (identifier);
    if (gone == held_.end())
        return;
    Keys orphans = gone->second;
    held_.erase (gone);
    for (const auto& [other, keys] : held_)
        orphans &= ~keys;

    for (std::size_t place = 0; place < orphans.size(); ++place)
    {
        if (! orphans[place])
            continue;
        auto release =
            juce::MidiMessage::noteOff (static_cast<int> (place / keyCount) + 1, static_cast<int> (place % keyCount));
        release.setTimeStamp (juce::Time::getMillisecondCounterHiRes() * 0.001);
        player_.handleIncomingMidiMessage (nullptr, release);
    }
}

} // namespace stopwright
