// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/KeySource.h"
#include "Sound/Engine.h"
#include "Sound/KeyHolders.h"
#include "Sound/PhraseDeck.h"

#include <juce_audio_processors/juce_audio_processors.h>

#include <array>
#include <atomic>
#include <mutex>

namespace stopwright
{

/// The live instrument as an audio processor: each MIDI channel is a keyboard of the instrument that was set, or all
/// of them play the card that was set; expression (controller 11) is the swell shoe. A phrase plays beside what comes in,
/// on the same keyboards: a key is down as long as either holds it. The same sound on every output channel. The state of the processor is the text of the card in hand.
///
/// Threading: processBlock on [audio], without allocation or lock; everything else on [control].
class BenchProcessor : public juce::AudioProcessor
{
public:
    BenchProcessor();
    ~BenchProcessor() override;

    /// As Engine::setCard; the processor remembers the card as its state. Fails: Error; what sounded goes on sounding.
    void playCard (const Card& card, const KeySource& keySource, bool newReference, double gainDb = 0.0);

    /// As Engine::setInstrument; the card of the stop in hand is remembered. Fails: Error; what sounded goes on sounding.
    void playInstrument (const Instrument& instrument,
                         const InstrumentCards& cards,
                         const std::string& tabletInHand,
                         bool newReference,
                         double gainDb = 0.0);

    /// Turns one number of the card in hand while it sounds; the card that is remembered becomes `card`. False for a
    /// knob the card does not have.
    bool turn (const PartKnob& knob, double value, const Card& card);
    bool turnTapLevel (const std::string& tapName, double voltsPeakToPeak, const Card& card);

    Engine& engine() noexcept { return engine_; }

    PhraseDeck& deck() noexcept { return deck_; }

    /// Whether a MIDI note is held, by an input or the phrase, for the picture of the keyboard: on any of `channels`, a bit each from channel 1 on.
    /// Threading: [any].
    bool isMidiKeyDown (int key, unsigned channels = everyChannel) const noexcept;

    static constexpr unsigned everyChannel = 0xffffU;

    /// Lets every key that comes in by MIDI go, with the next block. Threading: [any].
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

    void takeMidi (const juce::MidiMessageMetadata& message, int frame) noexcept;
    void takePhrase (int end) noexcept;
    void takeKey (KeyHolders& hand, int key, int keyboard, bool down, int frame) noexcept;
    void releaseKeyboard (KeyHolders& hand, int keyboard, int frame) noexcept;
    void releaseAll (KeyHolders& hand, int frame) noexcept;
    void renderTo (int frame) noexcept;
    void rememberCard (const Card& card);

    Engine engine_;

    juce::AudioBuffer<float>* block_ = nullptr; ///< the one that is processed, rendered as far as startFrame_
    int startFrame_ = 0;
    std::array<KeyEvent, eventCapacity> events_ {}; ///< not rendered yet, from startFrame_ on
    std::size_t eventCount_ = 0;
    PhraseDeck deck_;
    KeyHolders midiKeys_;                                      ///< held from inputs, by keyboard
    KeyHolders phraseKeys_;                                    ///< held by the phrase
    std::array<std::atomic<unsigned>, keyCount> shownKeys_ {}; ///< who holds each key, a bit for each channel
    std::atomic<bool> mustReleaseMidiKeys_ { false };

    std::mutex stateMutex_; ///< between control threads only
    Card card_;
    bool hasCard_ = false;

    JUCE_DECLARE_NON_COPYABLE_WITH_LEAK_DETECTOR (BenchProcessor)
};

} // namespace stopwright
