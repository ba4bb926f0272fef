// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchProcessor.h"

#include "Organ/CardDocument.h"
#include "Support/AllocationGuard.h"
#include "Support/Random.h"

#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>

namespace stopwright
{

namespace
{

class BenchProcessorTest : public testing::Test
{
protected:
    BenchProcessorTest() { prepare (48000.0, 256); }

    void prepare (double rate, int frames)
    {
        processor_.setPlayConfigDetails (0, 2, rate, frames);
        processor_.prepareToPlay (rate, frames);
        processor_.playCard (card_, keySourceForCardAlone (card_), true);
    }

    /// Runs one block and returns its peak; the test fails on a sample that is not finite.
    float run (int frames, const std::vector<std::pair<int, juce::MidiMessage>>& messages = {})
    {
        juce::AudioBuffer<float> buffer (2, frames);
        juce::MidiBuffer midi;
        for (const auto& [frame, message] : messages)
            midi.addEvent (message, frame);
        processor_.processBlock (buffer, midi);
        for (int channel = 0; channel < 2; ++channel)
        {
            for (int frame = 0; frame < frames; ++frame)
                EXPECT_TRUE (std::isfinite (buffer.getSample (channel, frame)));
        }
        return buffer.getMagnitude (0, frames);
    }

    float runFor (int frames)
    {
        float peak = 0.0f;
        for (int done = 0; done < frames; done += 256)
            peak = run (256);
        return peak; // of the last block
    }

    Card card_ = readCard (std::filesystem::path (STOPWRIGHT_ROOT) / "Presets" / "Krummhorn8.json");
    BenchProcessor processor_;
};

const juce::MidiMessage down = juce::MidiMessage::noteOn (1, 60, juce::uint8 (100));

} // namespace

TEST_F (BenchProcessorTest, PlaysANoteAndLetsItGo)
{
    EXPECT_LT (runFor (4800), 1e-6f);
    run (256, { { 10, down } });
    EXPECT_GT (runFor (9600), 1e-3f);
    EXPECT_TRUE (processor_.isMidiKeyDown (60));
    run (256, { { 10, juce::MidiMessage::noteOff (1, 60) } });
    EXPECT_LT (runFor (48000), 1e-5f);
    EXPECT_FALSE (processor_.isMidiKeyDown (60));
}

TEST_F (BenchProcessorTest, VelocityZeroIsANoteOff)
{
    run (256, { { 0, down } });
    run (256, { { 0, juce::MidiMessage (0x90, 60, 0) } });
    EXPECT_LT (runFor (48000), 1e-5f);
}

TEST_F (BenchProcessorTest, HearsEveryChannel)
{
    for (int channel = 1; channel <= 16; ++channel)
    {
        run (256, { { 0, juce::MidiMessage::noteOn (channel, 64, juce::uint8 (1)) } });
        EXPECT_GT (runFor (9600), 1e-3f) << channel;
        run (256, { { 0, juce::MidiMessage::noteOff (channel, 64) } });
        runFor (24000);
    }
}

TEST_F (BenchProcessorTest, AKeyOnTwoChannelsSoundsUntilBothLetGo)
{
    const auto send = [this] (const juce::MidiMessage& message) { run (256, { { 0, message } }); };
    send (juce::MidiMessage::noteOn (1, 60, juce::uint8 (90)));
    send (juce::MidiMessage::noteOn (2, 60, juce::uint8 (90)));
    send (juce::MidiMessage::noteOff (1, 60));
    EXPECT_TRUE (processor_.isMidiKeyDown (60));
    send (juce::MidiMessage::allNotesOff (1));
    EXPECT_TRUE (processor_.isMidiKeyDown (60));
    send (juce::MidiMessage::noteOff (2, 60));
    EXPECT_FALSE (processor_.isMidiKeyDown (60));
}

TEST_F (BenchProcessorTest, AllNotesOffAndAllSoundOffSilence)
{
    for (const int controller : { 120, 123 })
    {
        for (const int key : { 40, 52, 60, 64, 67 })
            run (64, { { 3, juce::MidiMessage::noteOn (5, key, juce::uint8 (90)) } });
        EXPECT_GT (runFor (9600), 1e-3f);
        run (256, { { 100, juce::MidiMessage::controllerEvent (5, controller, 0) } });
        EXPECT_LT (runFor (48000), 1e-5f) << controller;
    }
}

TEST_F (BenchProcessorTest, BothChannelsPlayTheSame)
{
    juce::AudioBuffer<float> buffer (2, 256);
    juce::MidiBuffer midi;
    midi.addEvent (down, 0);
    for (int block = 0; block < 50; ++block)
        processor_.processBlock (buffer, midi);
    for (int frame = 0; frame < 256; ++frame)
        EXPECT_EQ (buffer.getSample (0, frame), buffer.getSample (1, frame));
}

TEST_F (BenchProcessorTest, TheCutIntoBlocksDoesNotMatter)
{
    const auto render = [&] (const std::vector<int>& sizes)
    {
        BenchProcessor fresh;
        fresh.setPlayConfigDetails (0, 2, 48000.0, 64);
        fresh.prepareToPlay (48000.0, 64);
        fresh.playCard (card_, keySourceForCardAlone (card_), true);
        std::vector<float> played;
        std::size_t next = 0;
        while (played.size() < 20000)
        {
            const int frames = sizes[next++ % sizes.size()];
            juce::AudioBuffer<float> buffer (2, frames);
            juce::MidiBuffer midi;
            const int at = 5000 - static_cast<int> (played.size());
            if (at >= 0 && at < frames)
                midi.addEvent (down, at);
            fresh.processBlock (buffer, midi);
            played.insert (played.end(), buffer.getReadPointer (0), buffer.getReadPointer (0) + frames);
        }
        return played;
    };

    const auto regular = render ({ 64 });
    const auto odd = render ({ 1, 17, 333, 64, 5, 1024, 2 }); // some longer than prepared
    float largest = 0.0f;
    for (std::size_t frame = 0; frame < 20000; ++frame)
        largest = std::max (largest, std::abs (regular[frame] - odd[frame]));
    EXPECT_LT (largest, 1e-6f); // a thousandth of the note's peak is 3e-5
    EXPECT_GT (*std::max_element (regular.begin(), regular.end()), 1e-3f);
}

TEST_F (BenchProcessorTest, DenserMidiThanTheListLosesNothing)
{
    std::vector<std::pair<int, juce::MidiMessage>> flood;
    for (int message = 0; message < 3000; ++message)
    {
        const int key = 36 + message % 61;
        flood.emplace_back (message % 256, (message / 61) % 2 == 0
                                               ? juce::MidiMessage::noteOn (1, key, juce::uint8 (80))
                                               : juce::MidiMessage::noteOff (1, key));
    }
    for (int key = 0; key < 128; ++key)
        flood.emplace_back (255, juce::MidiMessage::noteOff (1, key));
    run (256, flood);
    EXPECT_LT (runFor (48000), 1e-5f); // nothing hangs
}

TEST_F (BenchProcessorTest, NeitherAllocatesNorLocks)
{
    if (! AllocationGuard::isAvailable)
        GTEST_SKIP() << "the sanitizer replaces malloc itself";

    Random random (20);
    juce::AudioBuffer<float> buffer (2, 512);
    juce::MidiBuffer midi;
    midi.ensureSize (8192);
    std::size_t allocations = 0;
    std::size_t releases = 0;
    std::size_t locks = 0;
    for (int block = 0; block < 400; ++block)
    {
        midi.clear();
        const int frames = random.integer (1, 512);
        for (int message = 0; message < 6; ++message)
        {
            const int key = random.integer (30, 100);
            midi.addEvent (random.chance (0.5) ? juce::MidiMessage::noteOn (1, key, juce::uint8 (64))
                                               : juce::MidiMessage::noteOff (1, key),
                           random.integer (0, frames - 1));
        }
        if (block % 97 == 0)
            midi.addEvent (juce::MidiMessage::allNotesOff (1), 0);
        if (block % 7 == 0)
            processor_.turn ({ "R5", KnobKind::value }, random.logUniform (1e3, 1e5), card_);
        juce::AudioBuffer<float> part (buffer.getArrayOfWritePointers(), 2, frames);

        const AllocationGuard guard;
        processor_.processBlock (part, midi);
        allocations += guard.allocations();
        releases += guard.releases();
        locks += guard.locks();
    }
    EXPECT_EQ (allocations, 0u);
    EXPECT_EQ (releases, 0u);
    EXPECT_EQ (locks, 0u);
}

TEST_F (BenchProcessorTest, TheStateIsTheCardDocument)
{
    juce::MemoryBlock state;
    processor_.getStateInformation (state);
    EXPECT_EQ (state.toString().toStdString(), cardText (card_));

    BenchProcessor other;
    other.prepareToPlay (48000.0, 256);
    other.setStateInformation (state.getData(), static_cast<int> (state.getSize()));
    juce::MemoryBlock again;
    other.getStateInformation (again);
    EXPECT_EQ (again, state);

    const std::string rubbish = "\x01\x02 no card";
    other.setStateInformation (rubbish.data(), static_cast<int> (rubbish.size()));
    other.getStateInformation (again);
    EXPECT_EQ (again, state);
}

TEST_F (BenchProcessorTest, EveryRateAndBlockSizeIsFinite)
{
    for (const double rate : { 44100.0, 48000.0, 88200.0, 96000.0, 192000.0 })
    {
        for (const int frames : { 1, 16, 63, 512, 4096 })
        {
            prepare (rate, frames);
            run (frames, { { 0, down } });
            for (int done = 0; done < 2000; done += frames)
                run (frames);
        }
    }
}

TEST_F (BenchProcessorTest, OffersStereoAndMonoOnly)
{
    juce::AudioProcessor::BusesLayout layout;
    layout.outputBuses.add (juce::AudioChannelSet::stereo());
    EXPECT_TRUE (processor_.checkBusesLayoutSupported (layout));
    layout.outputBuses.set (0, juce::AudioChannelSet::quadraphonic());
    EXPECT_FALSE (processor_.checkBusesLayoutSupported (layout));
    EXPECT_FALSE (processor_.supportsDoublePrecisionProcessing());
}

} // namespace stopwright
