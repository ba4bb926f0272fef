// SPDX-License-Identifier: GPL-3.0-or-later
//
// BenchProcessor with a whole instrument: which channel plays which division, expression, and letting go.
#include "Bench/BenchProcessor.h"
#include "Organ/CardDocument.h"
#include "Organ/InstrumentDocument.h"

#include <gtest/gtest.h>

#include <filesystem>

namespace stopwright
{

namespace
{

class ProcessorOrganTest : public testing::Test
{
protected:
    ProcessorOrganTest()
    {
        for (auto& stop : organ_.stops)
            stop.drawn = stop.name == "Krummhorn 8" || stop.name == "Diapason 8";
        processor_.setPlayConfigDetails (0, 2, 48000.0, frames);
        processor_.prepareToPlay (48000.0, frames);
        processor_.playInstrument (organ_, cards_, "Krummhorn 8", true);
    }

    /// Runs one block, after these messages, and returns its peak.
    float run (const std::vector<juce::MidiMessage>& messages = {})
    {
        juce::AudioBuffer<float> buffer (2, frames);
        juce::MidiBuffer midi;
        for (const auto& message : messages)
            midi.addEvent (message, 0);
        processor_.processBlock (buffer, midi);
        return buffer.getMagnitude (0, frames);
    }

    /// The peak of the last of half a second.
    float settle()
    {
        float peak = 0.0f;
        for (int block = 0; block < 94; ++block)
            peak = run();
        return peak;
    }

    int sounding() { return processor_.engine().telemetry().soundingKeys; }

    static juce::MidiMessage on (int channel, int key)
    {
        return juce::MidiMessage::noteOn (channel, key, juce::uint8 (70));
    }

    static constexpr int frames = 256;
    const std::filesystem::path file_ = std::filesystem::path (STOPWRIGHT_ROOT) / "Presets" / "LarkfieldOrgan.json";
    Instrument organ_ = readInstrument (file_);
    const InstrumentCards cards_ = instrumentCards (organ_, file_);
    BenchProcessor processor_;
};

} // namespace

TEST_F (ProcessorOrganTest, AChannelPlaysItsDivision)
{
    processor_.engine().draw ("Diapason 8", false); // of the lower manual
    run ({ on (2, 60) });
    EXPECT_LT (settle(), 1e-5f);
    run ({ on (1, 60) });
    EXPECT_GT (settle(), 1e-3f);
    processor_.engine().draw ("Krummhorn 8", false);
    processor_.engine().draw ("Diapason 8", true);
    EXPECT_GT (settle(), 1e-3f);
    run ({ juce::MidiMessage::noteOff (2, 60) });
    EXPECT_LT (settle(), 1e-5f);
}

TEST_F (ProcessorOrganTest, TheSameKeyOnTwoDivisionsIsTwoKeys)
{
    run ({ on (1, 60), on (2, 60) });
    settle();
    EXPECT_EQ (sounding(), 2);
    EXPECT_TRUE (processor_.isMidiKeyDown (60, 0b01U));
    EXPECT_TRUE (processor_.isMidiKeyDown (60, 0b10U));
    EXPECT_FALSE (processor_.isMidiKeyDown (60, 0b100U));
    run ({ juce::MidiMessage::noteOff (1, 60) });
    run();
    EXPECT_EQ (sounding(), 1);
    EXPECT_FALSE (processor_.isMidiKeyDown (60, 0b01U));
    EXPECT_TRUE (processor_.isMidiKeyDown (60));
}

TEST_F (ProcessorOrganTest, AllNotesOffIsAboutItsChannelOnly)
{
    run ({ on (1, 60), on (1, 64), on (2, 67) });
    run ({ juce::MidiMessage::allNotesOff (1) });
    run();
    EXPECT_EQ (sounding(), 1);
    run ({ juce::MidiMessage::allSoundOff (2) });
    run();
    EXPECT_EQ (sounding(), 0);
}

TEST_F (ProcessorOrganTest, ExpressionIsTheSwellShoe)
{
    run ({ on (1, 60) });
    const float open = settle();
    run ({ juce::MidiMessage::controllerEvent (1, 7, 0) }); // volume is not the shoe
    EXPECT_EQ (processor_.engine().swell(), 1.0);
    run ({ juce::MidiMessage::controllerEvent (1, 11, 0) });
    EXPECT_EQ (processor_.engine().swell(), 0.0);
    EXPECT_LT (settle(), 0.1f * open);
    run ({ juce::MidiMessage::controllerEvent (1, 11, 127) });
    EXPECT_EQ (processor_.engine().swell(), 1.0);
    EXPECT_NEAR (settle() / open, 1.0f, 0.05f);
}

TEST_F (ProcessorOrganTest, AProgramChangeDoesNoHarm)
{
    run ({ on (1, 60), juce::MidiMessage::programChange (1, 12), juce::MidiMessage::channelPressureChange (1, 9) });
    EXPECT_GT (settle(), 1e-3f);
    EXPECT_EQ (sounding(), 1);
}

TEST_F (ProcessorOrganTest, AllMidiKeysCanBeLetGo)
{
    std::vector<juce::MidiMessage> all;
    for (int channel = 1; channel <= 16; ++channel)
    {
        for (int key = 0; key < 128; ++key)
            all.push_back (on (channel, key));
    }
    run (all);
    EXPECT_TRUE (processor_.isMidiKeyDown (127));
    run();
    EXPECT_GT (sounding(), 100);
    processor_.releaseMidiKeys();
    run();
    run();
    EXPECT_EQ (sounding(), 0);
    for (int key = 0; key < 128; ++key)
        EXPECT_FALSE (processor_.isMidiKeyDown (key)) << key;

    run ({ on (1, 60) }); // and the next key sounds
    run();
    EXPECT_EQ (sounding(), 1);
}

TEST_F (ProcessorOrganTest, TheStateIsTheCardOfTheStopInHand)
{
    juce::MemoryBlock state;
    processor_.getStateInformation (state);
    EXPECT_EQ (state.toString().toStdString(), cardText (readCard (file_.parent_path() / "Krummhorn8.json")));
}

} // namespace stopwright
