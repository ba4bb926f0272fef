// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/PlayerActions.h"

#include "Bench/UsualPlaces.h"
#include "Command/MidiReading.h"
#include "Sound/PracticePhrases.h"
#include "Units/Error.h"

#include <algorithm>
#include <bit>
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

bool PlayerActions::attempt (const std::function<void()>& action, const std::string& remedy)
{
    try
    {
        action();
        return true;
    }
    catch (const std::exception& error)
    {
        hasSaid_ = true;
        session_.say (error.what() + remedy);
        return false;
    }
}

void PlayerActions::requireDocument() const
{
    if (! session_.isOpen())
        throw Error ("There is nothing to play on; open a card or an instrument first.");
}

bool PlayerActions::playNow (const juce::File& file)
{
    return attempt ([&] { play (file); }, session_.isOpen() ? " Choose another MIDI file under \"Play\"." : "");
}

bool PlayerActions::playDemonstration()
{
    if (const auto phrase = demonstrationPhrase(); phrase != juce::File())
        return playNow (phrase);
    hasSaid_ = true;
    session_.say ("The demonstration phrase was not found beside the program; play a MIDI file under \"Play\".");
    return false;
}

bool PlayerActions::playScale (int division)
{
    return playPractice (division, PracticePhrases::scale);
}

bool PlayerActions::playFullChord (int division)
{
    return playPractice (division, PracticePhrases::fullChord);
}

bool PlayerActions::playPractice (int division, Practice make)
{
    return attempt (
        [&]
        {
            requireDocument();
            const auto& document = session_.document();
            deck().play (make (document.lowestKey (division), document.highestKey (division), keyboardOf (division)));
            playAgain_ = [this, division, make] { return playPractice (division, make); };
            if (std::exchange (hasSaid_, false))
                session_.say ({});
        },
        {});
}

/// A MIDI channel of the division, so that keys the window holds on it stay down when the phrase lets them go.
int PlayerActions::keyboardOf (int division) const
{
    const unsigned channels = session_.document().midiChannels (division);
    return channels != 0 ? Keyboard::ofChannel (std::countr_zero (channels) + 1) : Keyboard::ofDivision (division);
}

void PlayerActions::play (const juce::File& file)
{
    requireDocument();
    const std::filesystem::path path = file.getFullPathName().toStdString();
    const auto channels = channelsOfDocument (session_.document());
    auto played = readMidiPhrase (path, channels);
    const auto leftOut = joined (leftOutSentences (path, played, channels));
    played.phrase.seconds = std::max (played.phrase.seconds, played.fileSeconds);
    deck().play (std::move (played.phrase));
    lastFile_ = file;
    playAgain_ = [this, file] { return playNow (file); };
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
    else if (const auto again = playAgain_) // a copy: what plays replaces it
        again();
    else
        askAndPlay();
}

} // namespace stopwright
