// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/MaskShelf.h"
#include "Bench/ReadingChoices.h"
#include "Study/StopMatch.h"
#include "Units/LevelUnit.h"
#include "Units/PreferredValues.h"

#include <juce_data_structures/juce_data_structures.h>

namespace stopwright
{

/// What the bench remembers from one run to the next, in stopwright/bench.settings of the user's configuration folder
/// (XDG_CONFIG_HOME, else ~/.config). What does not stand there, or stands there as nothing that can be chosen, is as in
/// the first run. Threading: message thread.
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

    /// Whether the stops of an instrument and their place on the rail are in the window; the keyboard likewise.
    bool isRailShown() const;
    void setRailShown (bool isShown);
    bool isKeyboardShown() const;
    void setKeyboardShown (bool isShown);

    float textScale() const;
    void setTextScale (float scale);

    Series series() const;
    void setSeries (Series series);

    /// In which unit levels are read; volts peak to peak where none was chosen.
    LevelUnit levelUnit() const;
    void setLevelUnit (LevelUnit unit);

    /// Which reading is shown and how, as far as it is the user's manner and not the document's: kind, phase, divisions of
    /// the wave, level of the compass, keys of the stages. Probe, mask and unit are left at what they begin with.
    ReadingChoices readingManner() const;
    void setReadingManner (const ReadingChoices& choices);

    /// Where the target mask of the harmonics is to be found again.
    MaskShelf::Place targetMask() const;
    void setTargetMask (const MaskShelf::Place& place);

    /// By which measure the trials are made equally loud.
    LevelMeasure trialMeasure() const;
    void setTrialMeasure (LevelMeasure measure);

    /// Names of the MIDI inputs that are not to be heard.
    juce::StringArray unheardMidi() const;
    void setUnheardMidi (const juce::StringArray& names);

    juce::String windowState() const;
    void setWindowState (const juce::String& state);

    std::unique_ptr<juce::XmlElement> audioState() const;
    void setAudioState (const juce::XmlElement* state);

    static juce::File configurationFolder();

    /// The program's own folder in the configuration folder, with the settings and what is kept of unsaved work.
    static juce::File programFolder (const juce::File& configuration = configurationFolder());

private:
    int placeOf (const juce::String& key, int count, int usual) const;

    template <typename Choice>
    Choice chosen (const juce::String& key, int count, Choice usual) const
    {
        return static_cast<Choice> (placeOf (key, count, static_cast<int> (usual)));
    }

    std::optional<double> stepOf (const juce::String& key, double lowest, double highest) const;
    void setStep (const juce::String& key, std::optional<double> step);

    juce::PropertiesFile file_;
};

} // namespace stopwright
