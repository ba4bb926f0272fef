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

void BenchProcessor::playCard (const Card& card, const KeySource& keySource, bool newReference)
{
    engine_.setCard (card, keySource, newReference);
    rememberCard (card);
}

void BenchProcessor::playInstrument (const Instrument& instrument,
                                     const InstrumentCards& cards,
                                     const std::string& tabletInHand,
                                     bool newReference)
{
    engine_.setInstrument (instrument, cards, tabletInHand, newReference);
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
    reset();
}

void BenchProcessor::reset()
{
    midiKeys_.clear();
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

void BenchProcessor::takeKey (int key, int channel, bool down, int frameOffset) noexcept
{
    // A press is passed on though the channel has the key already: the engine may have let it go meanwhile.
    if (! down && ! midiKeys_.isHeldBy (key, channel))
        return;
    midiKeys_.change (key, channel, down);
    shownKeys_[static_cast<std::size_t> (key)].store (midiKeys_.holdersOf (key), std::memory_order_relaxed);
    events_[eventCount_++] = { frameOffset, key, down, Keyboard::ofChannel (channel + 1) };
}

void BenchProcessor::releaseChannel (int channel, int frameOffset) noexcept
{
    for (int key = 0; key < keyCount; ++key)
        takeKey (key, channel, false, frameOffset);
}

void BenchProcessor::releaseAllChannels (juce::AudioBuffer<float>& buffer) noexcept
{
    for (int channel = 0; channel < Keyboard::midiChannels; ++channel)
    {
        if (eventCount_ + keyCount > eventCapacity)
            renderPiece (buffer, 0, 0);
        releaseChannel (channel, 0);
    }
}

void BenchProcessor::takeMidi (const juce::MidiMessageMetadata& message, int frameOffset) noexcept
{
    // Raw bytes: building a MidiMessage may allocate for long messages.
    if (message.numBytes < 3)
        return;

    const int status = message.data[0] & 0xf0;
    const int channel = message.data[0] & 0x0f;
    const int first = message.data[1] & 0x7f;
    const int second = message.data[2] & 0x7f;

    if (status == 0x90 || status == 0x80)
    {
        takeKey (first, channel, status == 0x90 && second > 0, frameOffset);
    }
    else if (status == 0xb0 && (first == allNotesOff || first == allSoundOff))
    {
        releaseChannel (channel, frameOffset);
    }
    else if (status == 0xb0 && first == expression)
    {
        engine_.setSwell (second / highestControllerValue);
    }
}

void BenchProcessor::renderPiece (juce::AudioBuffer<float>& buffer, int startFrame, int frameCount) noexcept
{
    std::array<float*, maxChannels> channels {};
    const int channelCount = std::min (buffer.getNumChannels(), maxChannels);
    for (int channel = 0; channel < channelCount; ++channel)
        channels[static_cast<std::size_t> (channel)] = buffer.getWritePointer (channel, startFrame);

    engine_.process ({ events_.data(), eventCount_ }, { channels.data(), static_cast<std::size_t> (channelCount) },
                     frameCount);
    eventCount_ = 0;
}

void BenchProcessor::processBlock (juce::AudioBuffer<float>& buffer, juce::MidiBuffer& midi) noexcept
{
    const juce::ScopedNoDenormals noDenormals;
    const int frameCount = buffer.getNumSamples();
    int startFrame = 0;

    if (mustReleaseMidiKeys_.exchange (false, std::memory_order_relaxed))
        releaseAllChannels (buffer);
    for (const auto message : midi)
    {
        const int frame = std::clamp (message.samplePosition, startFrame, std::max (startFrame, frameCount - 1));

        // One message adds at most keyCount events; a block that is denser than the list runs in pieces.
        if (eventCount_ + keyCount > eventCapacity)
        {
            renderPiece (buffer, startFrame, frame - startFrame);
            startFrame = frame;
        }
        takeMidi (message, frame - startFrame);
    }
    renderPiece (buffer, startFrame, frameCount - startFrame);
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
