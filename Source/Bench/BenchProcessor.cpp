// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchProcessor.h"

#include "Organ/CardDocument.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr int expression = 11;
constexpr int allSoundOff = 120;
constexpr int allNotesOff = 123;
constexpr double highestControllerValue = 127.0;
constexpr int maxChannels = 2;

} // namespace

BenchProcessor::BenchProcessor()
    : AudioProcessor (BusesProperties().withOutput ("Output", juce::AudioChannelSet::stereo(), true))
{}

BenchProcessor::~BenchProcessor() = default;

void BenchProcessor::rememberCard (const Card& card)
{
    const std::scoped_lock lock (stateMutex_);
    card_ = card;
    hasCard_ = true;
}

void BenchProcessor::playCard (const Card& card, const KeySource& keySource, bool newReference, double gainDb)
{
    engine_.setCard (card, keySource, newReference, gainDb);
    rememberCard (card);
}

void BenchProcessor::playInstrument (const Instrument& instrument,
                                     const InstrumentCards& cards,
                                     const std::string& tabletInHand,
                                     bool newReference,
                                     double gainDb)
{
    engine_.setInstrument (instrument, cards, tabletInHand, newReference, gainDb);
    const auto stop = std::ranges::find (instrument.stops, tabletInHand, &StopTablet::name);
    const auto index = static_cast<std::size_t> (stop - instrument.stops.begin());
    if (index < cards.ofStops.size() && cards.ofStops[index])
        rememberCard (*cards.ofStops[index]);
}

bool BenchProcessor::turn (const PartKnob& knob, double value, const Card& card)
{
    rememberCard (card);
    return engine_.turn (knob, value);
}

bool BenchProcessor::turnTapLevel (const std::string& tapName, double voltsPeakToPeak, const Card& card)
{
    rememberCard (card);
    return engine_.turnTapLevel (tapName, voltsPeakToPeak);
}

bool BenchProcessor::isMidiKeyDown (int key, unsigned channels) const noexcept
{
    return key >= 0 && key < keyCount
           && (shownKeys_[static_cast<std::size_t> (key)].load (std::memory_order_relaxed) & channels) != 0;
}

void BenchProcessor::releaseMidiKeys() noexcept
{
    mustReleaseMidiKeys_.store (true, std::memory_order_relaxed);
}

void BenchProcessor::prepareToPlay (double sampleRate, int maximumBlockSize)
{
    engine_.prepare ({ sampleRate, std::max (1, maximumBlockSize) });
    deck_.prepare (sampleRate);
    reset();
}

void BenchProcessor::reset()
{
    midiKeys_.clear();
    phraseKeys_.clear();
    eventCount_ = 0;
    for (auto& shown : shownKeys_)
        shown.store (0, std::memory_order_relaxed);
}

bool BenchProcessor::isBusesLayoutSupported (const BusesLayout& layouts) const
{
    const auto& output = layouts.getMainOutputChannelSet();
    return layouts.getMainInputChannels() == 0
           && (output == juce::AudioChannelSet::mono() || output == juce::AudioChannelSet::stereo());
}

void BenchProcessor::takeKey (KeyHolders& hand, int key, int keyboard, bool down, int frame) noexcept
{
    // A press is passed on though the keyboard has the key already: the engine may have let it go meanwhile.
    if (key < 0 || key >= keyCount || (! down && ! hand.isHeldBy (key, keyboard)))
        return;
    hand.change (key, keyboard, down);
    shownKeys_[static_cast<std::size_t> (key)].store (midiKeys_.holdersOf (key) | phraseKeys_.holdersOf (key),
                                                      std::memory_order_relaxed);
    if (! down && (midiKeys_.isHeldBy (key, keyboard) || phraseKeys_.isHeldBy (key, keyboard)))
        return; // the other one holds it on
    if (eventCount_ == eventCapacity)
        renderTo (frame);
    events_[eventCount_++] = { frame - startFrame_, key, down, keyboard };
}

void BenchProcessor::releaseKeyboard (KeyHolders& hand, int keyboard, int frame) noexcept
{
    for (int key = 0; key < keyCount; ++key)
        takeKey (hand, key, keyboard, false, frame);
}

void BenchProcessor::releaseAll (KeyHolders& hand, int frame) noexcept
{
    for (int keyboard = 0; keyboard < Keyboard::count; ++keyboard)
        releaseKeyboard (hand, keyboard, frame);
}

void BenchProcessor::takeMidi (const juce::MidiMessageMetadata& message, int frame) noexcept
{
    // Raw bytes: building a MidiMessage may allocate for long messages.
    if (message.numBytes < 3)
        return;

    const int status = message.data[0] & 0xf0;
    const int keyboard = Keyboard::ofChannel ((message.data[0] & 0x0f) + 1);
    const int first = message.data[1] & 0x7f;
    const int second = message.data[2] & 0x7f;

    if (status == 0x90 || status == 0x80)
    {
        takeKey (midiKeys_, first, keyboard, status == 0x90 && second > 0, frame);
    }
    else if (status == 0xb0 && (first == allSoundOff || first >= allNotesOff))
    {
        releaseKeyboard (midiKeys_, keyboard, frame);
    }
    else if (status == 0xb0 && first == expression)
    {
        engine_.setSwell (second / highestControllerValue);
    }
}

void BenchProcessor::takePhrase (int end) noexcept
{
    while (const auto event = deck_.next (end))
    {
        if (event->kind == PhraseEvent::Kind::swell)
            engine_.setSwell (event->swellPosition);
        else if (event->kind == PhraseEvent::Kind::releaseAll)
            releaseAll (phraseKeys_, event->frameOffset);
        else
            takeKey (phraseKeys_, event->key.key, event->key.keyboard, event->key.down, event->frameOffset);
    }
}

/// Renders as far as a frame of the block, with the events there are.
void BenchProcessor::renderTo (int frame) noexcept
{
    std::array<float*, maxChannels> channels {};
    const int channelCount = std::min (block_->getNumChannels(), maxChannels);
    for (int channel = 0; channel < channelCount; ++channel)
        channels[static_cast<std::size_t> (channel)] = block_->getWritePointer (channel, startFrame_);

    engine_.process ({ events_.data(), eventCount_ }, { channels.data(), static_cast<std::size_t> (channelCount) },
                     frame - startFrame_);
    eventCount_ = 0;
    startFrame_ = frame;
}

void BenchProcessor::processBlock (juce::AudioBuffer<float>& buffer, juce::MidiBuffer& midi) noexcept
{
    const juce::ScopedNoDenormals noDenormals;
    const int frameCount = buffer.getNumSamples();
    block_ = &buffer;
    startFrame_ = 0;

    if (mustReleaseMidiKeys_.exchange (false, std::memory_order_relaxed))
        releaseAll (midiKeys_, 0);
    deck_.begin();
    int frame = 0;
    for (const auto message : midi)
    {
        frame = std::clamp (message.samplePosition, frame, std::max (frame, frameCount - 1));
        takePhrase (frame);
        takeMidi (message, frame);
    }
    takePhrase (frameCount);
    renderTo (frameCount);
    midi.clear();
}

void BenchProcessor::getStateInformation (juce::MemoryBlock& destination)
{
    const std::scoped_lock lock (stateMutex_);
    if (! hasCard_)
        return;
    const auto text = cardText (card_);
    destination.replaceAll (text.data(), text.size());
}

void BenchProcessor::setStateInformation (const void* data, int sizeInBytes)
{
    try
    {
        const auto card =
            parseCard ({ static_cast<const char*> (data), static_cast<std::size_t> (sizeInBytes) }, "saved state");
        playCard (card, keySourceForCardAlone (card), true);
    }
    catch (const Error& error)
    {
        juce::Logger::writeToLog (error.what());
    }
}

} // namespace stopwright
