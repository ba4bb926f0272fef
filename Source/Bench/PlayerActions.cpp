// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/PlayerActions.h"

#include "Bench/UsualPlaces.h"
#include "Command/MidiReading.h"
#include "Units/Error.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

ChannelCompasses channelsOfDocument (const BenchDocument& document)
{
    return document.instrument ? channelsOf (*document.instrument)
                               : channelsOfOne ({ document.lowestKey (0), document.highestKey (0) });
}

std::string joined (const std::vector<std::string>& sentences)
{
    std::string text;
    for (const auto& sentence : sentences)
        text += (text.empty() ? "" : " ") + sentence;
    return text;
}

} // namespace

bool PlayerActions::playNow (const juce::File& file)
{
    try
    {
        play (file);
        return true;
    }
    catch (const std::exception& error)
    {
        hasSaid_ = true;
        session_.say (std::string (error.what()) + " Choose another MIDI file under \"Play\".");
        return false;
    }
}

void PlayerActions::play (const juce::File& file)
{
    if (! session_.isOpen())
        throw Error ("There is nothing to play on; open a card or an instrument first.");
    const std::filesystem::path path = file.getFullPathName().toStdString();
    const auto channels = channelsOfDocument (session_.document());
    auto played = readMidiPhrase (path, channels);
    const auto leftOut = joined (leftOutSentences (path, played, channels));
    played.phrase.seconds = std::max (played.phrase.seconds, played.fileSeconds);
    deck().play (std::move (played.phrase));
    lastFile_ = file;
    if (std::exchange (hasSaid_, ! leftOut.empty()) || ! leftOut.empty())
        session_.say (leftOut);
}

void PlayerActions::askAndPlay()
{
    const auto folder = lastFile_ != juce::File() ? lastFile_.getParentDirectory() : folderOf (session_.document());
    chooser_ = std::make_unique<juce::FileChooser> ("Play a MIDI file", folder, "*.mid;*.midi");
    chooser_->launchAsync (juce::FileBrowserComponent::openMode | juce::FileBrowserComponent::canSelectFiles,
                           [this] (const juce::FileChooser& chooser)
                           {
                               if (const auto file = chooser.getResult(); file != juce::File())
                                   playNow (file);
                           });
}

void PlayerActions::playOrStop()
{
    if (isPlaying())
        stop();
    else if (lastFile_ != juce::File())
        playNow (lastFile_);
    else
        askAndPlay();
}

} // namespace stopwright
