// SPDX-License-Identifier: GPL-3.0-or-later
//
// BenchProcessor with a phrase that plays: beside MIDI inputs, in a loop, through other documents, without allocation.
#include "Bench/BenchProcessor.h"
#include "Organ/CardDocument.h"
#include "Organ/InstrumentDocument.h"
#include "Support/AllocationGuard.h"
#include "Support/Random.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <map>

namespace stopwright
{

namespace
{

using Messages = std::multimap<int, juce::MidiMessage>; ///< by frame from the beginning

constexpr double rateHz = 48000.0;
const std::filesystem::path organFile = std::filesystem::path (STOPWRIGHT_ROOT) / "Presets" / "LarkfieldOrgan.json";
const Instrument organ = readInstrument (organFile);
const InstrumentCards cards = instrumentCards (organ, organFile);

/// A processor with the organ that has run from the beginning.
class Playing
{
public:
    explicit Playing (int blockFrames = 256) : blockFrames_ (blockFrames)
    {
        processor.setPlayConfigDetails (0, 2, rateHz, blockFrames);
        processor.prepareToPlay (rateHz, blockFrames);
        processor.playInstrument (organ, cards, "Krummhorn 8", true);
    }

    /// The first channel of the next blocks, at least so many frames.
    std::vector<float> run (int frames, const Messages& messages = {})
    {
        std::vector<float> played;
        juce::AudioBuffer<float> buffer (2, blockFrames_);
        juce::MidiBuffer midi;
        while (static_cast<int> (played.size()) < frames)
        {
            for (auto next = messages.lower_bound (frame_); next != messages.lower_bound (frame_ + blockFrames_);
                 ++next)
                midi.addEvent (next->second, next->first - frame_);
            processor.processBlock (buffer, midi);
            played.insert (played.end(), buffer.getReadPointer (0), buffer.getReadPointer (0) + blockFrames_);
            frame_ += blockFrames_;
        }
        return played;
    }

    int sounding()
    {
        run (1);
        return processor.engine().telemetry().soundingKeys;
    }

    BenchProcessor processor;

private:
    int blockFrames_;
    int frame_ = 0;
};

juce::MidiMessage on (int channel, int key)
{
    return juce::MidiMessage::noteOn (channel, key, juce::uint8 (90));
}

TimedKey keyAt (int frame, int channel, int key, bool down)
{
    return { frame / rateHz, key, down, Keyboard::ofChannel (channel) };
}

float peakOf (const std::vector<float>& samples)
{
    float peak = 0.0f;
    for (const float sample : samples)
        peak = std::max (peak, std::abs (sample));
    return peak;
}

/// Two notes of two divisions and a move of the shoe, in odd places of the blocks.
Phrase twoNotes (int later = 0)
{
    return { .keys = { keyAt (1003 + later, 1, 60, true), keyAt (1777, 2, 55, true), keyAt (4801, 1, 60, false),
                       keyAt (6000, 2, 55, false) },
             .seconds = 0.2 };
}

} // namespace

TEST (PhrasePlaying, ANoteSoundsAtItsSampleAsOneFromAnInputDoes)
{
    for (const int blockFrames : { 64, 256, 1000 })
    {
        Playing byPhrase (blockFrames);
        byPhrase.processor.deck().play (twoNotes());
        Playing byInput (blockFrames);
        const Messages messages { { 1003, on (1, 60) },
                                  { 1777, on (2, 55) },
                                  { 4801, juce::MidiMessage::noteOff (1, 60) },
                                  { 6000, juce::MidiMessage::noteOff (2, 55) } };
        const auto expected = byInput.run (12000, messages);
        EXPECT_GT (peakOf (expected), 1e-3f);
        EXPECT_EQ (byPhrase.run (12000), expected) << blockFrames;

        Playing late (blockFrames);
        late.processor.deck().play (twoNotes (1));
        EXPECT_NE (late.run (12000), expected) << "one frame later is told apart";
    }
}

TEST (PhrasePlaying, TheShoeFollowsThePhrase)
{
    Playing playing;
    playing.processor.deck().play ({ .keys = {}, .seconds = 1.0, .swells = { { 0.01, 0.5 }, { 0.1, 0.25 } } });
    playing.run (600);
    EXPECT_EQ (playing.processor.engine().swell(), 0.5);
    playing.run (4800);
    EXPECT_EQ (playing.processor.engine().swell(), 0.25);
}

TEST (PhrasePlaying, StoppingLeavesTheKeysOfOthersDown)
{
    Playing playing;
    playing.processor.deck().play (
        { .keys = { keyAt (0, 1, 60, true), keyAt (0, 1, 64, true), keyAt (0, 3, 40, true) }, .seconds = 10.0 });
    playing.run (600, { { 100, on (1, 60) }, { 100, on (2, 67) } });
    playing.processor.engine().key (72, true, 1);
    EXPECT_EQ (playing.sounding(), 5);
    playing.processor.deck().stop();
    EXPECT_EQ (playing.sounding(), 3); // 60 and 67 of the inputs, 72 of the window
    EXPECT_TRUE (playing.processor.isMidiKeyDown (60));
    EXPECT_FALSE (playing.processor.isMidiKeyDown (64));
}

TEST (PhrasePlaying, LettingTheInputsGoLeavesThePhrase)
{
    Playing playing;
    playing.processor.deck().play ({ .keys = { keyAt (0, 1, 60, true) }, .seconds = 10.0 });
    playing.run (256, { { 10, on (1, 60) }, { 10, on (1, 62) } });
    playing.processor.releaseMidiKeys();
    EXPECT_EQ (playing.sounding(), 1);
    EXPECT_TRUE (playing.processor.isMidiKeyDown (60));
}

TEST (PhrasePlaying, ALoopHangsNoKey)
{
    Playing playing;
    auto& deck = playing.processor.deck();
    deck.setLoop (true);
    deck.play ({ .keys = { keyAt (0, 1, 60, true), keyAt (1000, 1, 64, true) }, .seconds = 0.05 }); // none is let go
    for (int round = 0; round < 40; ++round)
        EXPECT_LE (playing.sounding(), 2);
    deck.setLoop (false);
    playing.run (4800);
    EXPECT_FALSE (deck.isPlaying());
    EXPECT_EQ (playing.sounding(), 0);
    EXPECT_LT (peakOf (playing.run (256)), 1e-3f);
    playing.run (48000);
    EXPECT_LT (peakOf (playing.run (256)), 1e-5f);
}

TEST (PhrasePlaying, AllKeysOfAllChannelsAtOnce)
{
    Playing playing;
    Phrase phrase { .keys = {}, .seconds = 0.1 };
    for (int channel = 1; channel <= 16; ++channel)
        for (int key = 0; key < 128; ++key)
            phrase.keys.push_back (keyAt (17, channel, key, true));
    playing.processor.deck().play (phrase);
    EXPECT_EQ (playing.sounding(), 61 + 61 + 30); // the keys of the three divisions
    playing.run (4800);
    EXPECT_EQ (playing.sounding(), 0);
    for (int key = 0; key < 128; ++key)
        EXPECT_FALSE (playing.processor.isMidiKeyDown (key)) << key;
}

TEST (PhrasePlaying, AnotherDocumentWhileItPlaysHangsNothing)
{
    Playing playing;
    auto& processor = playing.processor;
    const auto card = readCard (organFile.parent_path() / "Oboe8.json");
    processor.deck().setLoop (true);
    processor.deck().play (twoNotes());
    for (int change = 0; change < 20; ++change)
    {
        playing.run (1500);
        if (change % 2 == 0)
            processor.playCard (card, keySourceForCardAlone (card), true);
        else
            processor.playInstrument (organ, cards, "Krummhorn 8", true);
        processor.engine().collectReplaced();
    }
    processor.deck().stop();
    playing.run (24000);
    EXPECT_EQ (playing.sounding(), 0);
    EXPECT_LT (peakOf (playing.run (256)), 1e-5f);
}

TEST (PhrasePlaying, AnotherDeviceGoesOnWithThePhrase)
{
    Playing playing;
    auto& processor = playing.processor;
    processor.deck().play (
        { .keys = { keyAt (0, 1, 60, true), keyAt (9600, 1, 60, false), keyAt (9600, 1, 62, true) }, .seconds = 1.0 });
    playing.run (4800);
    EXPECT_EQ (playing.sounding(), 1);
    processor.prepareToPlay (96000.0, 256);
    EXPECT_FALSE (processor.isMidiKeyDown (60));
    playing.run (19200);
    EXPECT_EQ (playing.sounding(), 1);
    EXPECT_TRUE (processor.isMidiKeyDown (62));
}

TEST (PhrasePlaying, NeitherAllocatesNorLocks)
{
    if (! AllocationGuard::isAvailable)
        GTEST_SKIP() << "the sanitizer replaces malloc itself";

    Playing playing;
    auto& deck = playing.processor.deck();
    deck.setLoop (true);
    Random random (7);
    Phrase phrase { .keys = {}, .seconds = 0.3 };
    for (int event = 0; event < 3000; ++event)
        phrase.keys.push_back (
            keyAt (random.integer (0, 14000), random.integer (1, 3), random.integer (30, 100), random.chance (0.5)));
    phrase.swells = { { 0.05, 0.3 }, { 0.2, 0.9 } };

    juce::AudioBuffer<float> buffer (2, 64);
    juce::MidiBuffer midi;
    midi.ensureSize (1024);
    AllocationGuard::Counts counts;
    for (int block = 0; block < 600; ++block)
    {
        if (block % 150 == 0)
            deck.play (phrase);
        if (block % 150 == 140)
            deck.stop();
        midi.addEvent (on (1, 60), block % 64);
        const AllocationGuard guard;
        playing.processor.processBlock (buffer, midi);
        counts.allocations += guard.allocations();
        counts.releases += guard.releases();
        counts.locks += guard.locks();
    }
    EXPECT_EQ (counts.allocations, 0U);
    EXPECT_EQ (counts.releases, 0U);
    EXPECT_EQ (counts.locks, 0U);
    EXPECT_FALSE (deck.isPlaying());
}

} // namespace stopwright
