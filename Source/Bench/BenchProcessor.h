// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/KeySource.h"
#include "Sound/Engine.h"
#include "Sound/KeyHolders.h"

#include <juce_audio_processors/juce_audio_processors.h>

#include <array>
#include <atomic>
#include <mutex>

namespace stopwright
{

/// The live instrument as an audio processor: each MIDI channel is a keyboard of the instrument that was set, or all
/// of them play the card that was set; expression (controller 11) is the swell shoe. The same sound on every output
/// channel. The state of the processor is the text of the card in hand.
///
/// Threading: processBlock on [audio], without allocation or lock; everything else on [control].
class BenchProcessor : public juce::AudioProcessor
{
public:
    BenchProcessor();
    ~BenchProcessor() override;

    /// As Engine::setCard; the processor remembers the card as its state. Fails: Error; what sounded goes on sounding.
    void playCard (const Card& card, const KeySource& keySource, bool newReference);

    /// As Engine::setInstrument; the card of the stop in hand is remembered. Fails: Error; what sounded goes on sounding.
    void playInstrument (const Instrument& instrument,
                         const InstrumentCards& cards,
                         const std::string& tabletInHand,
                         bool newReference);

    /// Turns one number of the card in hand while it sounds; the card that is remembered becomes `card`. False for a
    /// knob the card does not have.
    bool turn (const PartKnob& knob, double value, const Card& card);
    bool turnTapLevel (const std::string& tapName, double voltsPeakToPeak, const Card& card);

    Engine& engine() noexcept { return engine_; }

    /// Whether a MIDI note is held, for the picture of the keyboard: on any of `channels`, a bit each from channel 1 on.
    /// Threading: [any].
    bool isMidiKeyDown (int key, unsigned channels = everyChannel) const noexcept;

    static constexpr unsigned everyChannel = 0xffffU;

    /// Lets every MIDI key go, with the next block. Threading: [any].
    void releaseMidiKeys() noexcept;

    void prepareToPlay (double sampleRate, int maximumBlockSize) override;

    void releaseResources() override {}

    void reset() override;
    bool isBusesLayoutSupported (const BusesLayout& layouts) const override;

    void processBlock (juce::AudioBuffer<float>& buffer, juce::MidiBuffer& midi) noexcept override;
    using juce::AudioProcessor::processBlock;

    const juce::String getName() const override { return "Stopwright bench"; }

    bool acceptsMidi() const override { return true; }

    bool producesMidi() const override { return false; }

    double getTailLengthSeconds() const override { return 0.5; }

    bool supportsDoublePrecisionProcessing() const override { return false; }

    bool hasEditor() const override { return false; }

    juce::AudioProcessorEditor* createEditor() override { return nullptr; }

    int getNumPrograms() override { return 1; }

    int getCurrentProgram() override { return 0; }

    void setCurrentProgram (int) override {}

    const juce::String getProgramName (int) override { return {}; }

    void changeProgramName (int, const juce::String&) override {}

    /// The card document as UTF-8 text. A state that is no sound card is left unused.
    void getStateInformation (juce::MemoryBlock& destination) override;
    void setStateInformation (const void* data, int sizeInBytes) override;

private:
    static constexpr int keyCount = 128;
    static constexpr std::size_t eventCapacity = 512;

    void takeMidi (const juce::MidiMessageMetadata& message, int frameOffset) noexcept;
    void takeKey (int key, int channel, bool down, int frameOffset) noexcept;
    void releaseChannel (int channel, int frameOffset) noexcept;
    void releaseAllChannels (juce::AudioBuffer<float>& buffer) noexcept;
    void renderPiece (juce::AudioBuffer<float>& buffer, int startFrame, int frameCount) noexcept;
    void rememberCard (const Card& card);

    Engine engine_;

    std::array<KeyEvent, eventCapacity> events_ {};
    std::size_t eventCount_ = 0;
    KeyHolders midiKeys_;                                      ///< by MIDI channel
    std::array<std::atomic<unsigned>, keyCount> shownKeys_ {}; ///< who holds each key, a bit for each channel
    std::atomic<bool> mustReleaseMidiKeys_ { false };

    std::mutex stateMutex_; ///< between control threads only
    Card card_;
    bool hasCard_ = false;

    JUCE_DECLARE_NON_COPYABLE_WITH_LEAK_DETECTOR (BenchProcessor)
};

} // namespace stopwright
