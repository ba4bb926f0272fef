// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/MidiInputs.h"

#include <gtest/gtest.h>

#include <set>
#include <utility>

namespace stopwright
{

namespace
{

/// What is down after all messages, by channel and key.
struct Player : juce::MidiInputCallback
{
    void handleIncomingMidiMessage (juce::MidiInput*, const juce::MidiMessage& message) override
    {
        ++count;
        const std::pair key { message.getChannel(), message.getNoteNumber() };
        if (message.isNoteOn())
            down.insert (key);
        else if (message.isNoteOff())
            down.erase (key);
    }

    std::set<std::pair<int, int>> down;
    int count = 0;
};

juce::MidiMessage on (int channel, int key)
{
    return juce::MidiMessage::noteOn (channel, key, juce::uint8 (80));
}

} // namespace

TEST (MidiInputs, PassesEveryMessageOn)
{
    Player player;
    MidiInputs inputs (player);
    inputs.take ("a", on (1, 60));
    inputs.take ("a", juce::MidiMessage::controllerEvent (1, 11, 64));
    inputs.take ("a", juce::MidiMessage::programChange (1, 5));
    inputs.handleIncomingMidiMessage (nullptr, juce::MidiMessage::noteOff (1, 60));
    EXPECT_EQ (player.count, 4);
}

TEST (MidiInputs, TheKeysOfAnInputThatGoesAwayAreLetGo)
{
    Player player;
    MidiInputs inputs (player);
    inputs.take ("a", on (1, 60));
    inputs.take ("a", on (2, 64));
    inputs.take ("b", on (1, 67));
    inputs.inputGone ("a");
    EXPECT_EQ (player.down, (std::set<std::pair<int, int>> { { 1, 67 } }));

    const int count = player.count;
    inputs.inputGone ("a"); // it has nothing any more
    inputs.inputGone ("never seen");
    EXPECT_EQ (player.count, count);
}

TEST (MidiInputs, AKeyThatAnotherInputHoldsStaysDown)
{
    Player player;
    MidiInputs inputs (player);
    inputs.take ("a", on (1, 60));
    inputs.take ("b", on (1, 60));
    inputs.inputGone ("a");
    EXPECT_EQ (player.down.size(), 1U);
    inputs.inputGone ("b");
    EXPECT_TRUE (player.down.empty());
}

TEST (MidiInputs, AnInputThatIsNotHeardLetsGoAndIsSilentUntilItIsHeardAgain)
{
    Player player;
    MidiInputs inputs (player);
    inputs.take ("a", on (1, 60));
    inputs.take ("b", on (1, 67));
    inputs.setHeard ("a", false);
    EXPECT_EQ (player.down, (std::set<std::pair<int, int>> { { 1, 67 } }));

    const int count = player.count;
    inputs.take ("a", on (1, 62));
    inputs.take ("a", juce::MidiMessage::controllerEvent (1, 11, 0));
    inputs.setHeard ("a", false);
    EXPECT_EQ (player.count, count);

    inputs.setHeard ("a", true);
    inputs.take ("a", on (1, 62));
    EXPECT_EQ (player.down.size(), 2U);
}

TEST (MidiInputs, WhatWasLetGoIsNotLetGoAgain)
{
    Player player;
    MidiInputs inputs (player);
    inputs.take ("a", on (3, 60));
    inputs.take ("a", juce::MidiMessage::noteOff (3, 60));
    inputs.take ("a", on (3, 61));
    inputs.take ("a", juce::MidiMessage::allNotesOff (3));
    const int count = player.count;
    inputs.inputGone ("a");
    EXPECT_EQ (player.count, count);
}

} // namespace stopwright
