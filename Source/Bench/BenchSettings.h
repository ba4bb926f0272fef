// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Units/LevelUnit.h"
#include "Units/PreferredValues.h"

#include <juce_data_structures/juce_data_structures.h>

namespace stopwright
{

/// What the bench remembers from one run to the next, in stopwright/bench.settings of the user's configuration folder
/// (XDG_CONFIG_HOME, else ~/.config). Threading: message thread.
class BenchSettings
{
public:
    static constexpr int maxRecentFiles = 8;

    /// `folder` takes the place of the user's configuration folder.
    explicit BenchSettings (const juce::File& folder = configurationFolder());
    ~BenchSettings();

    bool areCautionsAcknowledged() const;
    void acknowledgeCautions();

    juce::StringArray recentFiles() const;
    void addRecentFile (const juce::File& file);

    bool isNight() const;
    void setNight (bool isNight);

    float textScale() const;
    void setTextScale (float scale);

    Series series() const;
    void setSeries (Series series);

    /// In which unit levels are read; volts peak to peak where none was chosen.
    LevelUnit levelUnit() const;
    void setLevelUnit (LevelUnit unit);

    /// Names of the MIDI inputs that are not to be heard.
    juce::StringArray unheardMidi() const;
    void setUnheardMidi (const juce::StringArray& names);

    juce::String windowState() const;
    void setWindowState (const juce::String& state);

    std::unique_ptr<juce::XmlElement> audioState() const;
    void setAudioState (const juce::XmlElement* state);

    static juce::File configurationFolder();

private:
    juce::PropertiesFile file_;
};

} // namespace stopwright
