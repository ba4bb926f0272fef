// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchSettings.h"

#include "Study/ScopeSetting.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

juce::PropertiesFile::Options options()
{
    juce::PropertiesFile::Options chosen;
    chosen.storageFormat = juce::PropertiesFile::storeAsXML;
    chosen.millisecondsBeforeSaving = 500;
    return chosen;
}

} // namespace

juce::File BenchSettings::configurationFolder()
{
    const auto configured = juce::SystemStats::getEnvironmentVariable ("XDG_CONFIG_HOME", {});
    if (juce::File::isAbsolutePath (configured))
        return juce::File (configured);
    return juce::File::getSpecialLocation (juce::File::userHomeDirectory).getChildFile (".config");
}

juce::File BenchSettings::programFolder (const juce::File& configuration)
{
    return configuration.getChildFile ("stopwright");
}

BenchSettings::BenchSettings (const juce::File& folder)
    : file_ (programFolder (folder).getChildFile ("bench.settings"), options())
{}

BenchSettings::~BenchSettings()
{
    file_.saveIfNeeded();
}

bool BenchSettings::areCautionsAcknowledged() const
{
    return file_.getBoolValue ("cautionsAcknowledged", false);
}

void BenchSettings::acknowledgeCautions()
{
    file_.setValue ("cautionsAcknowledged", true);
    file_.saveIfNeeded();
}

juce::StringArray BenchSettings::recentFiles() const
{
    return juce::StringArray::fromLines (file_.getValue ("recentFiles"));
}

void BenchSettings::addRecentFile (const juce::File& file)
{
    auto files = recentFiles();
    files.removeEmptyStrings();
    files.removeString (file.getFullPathName());
    files.insert (0, file.getFullPathName());
    while (files.size() > maxRecentFiles)
        files.remove (files.size() - 1);
    file_.setValue ("recentFiles", files.joinIntoString ("\n"));
}

bool BenchSettings::isNight() const
{
    return file_.getBoolValue ("night", false);
}

void BenchSettings::setNight (bool isNight)
{
    file_.setValue ("night", isNight);
}

bool BenchSettings::isRailShown() const
{
    return file_.getBoolValue ("railShown", true);
}

void BenchSettings::setRailShown (bool isShown)
{
    file_.setValue ("railShown", isShown);
}

bool BenchSettings::isKeyboardShown() const
{
    return file_.getBoolValue ("keyboardShown", true);
}

void BenchSettings::setKeyboardShown (bool isShown)
{
    file_.setValue ("keyboardShown", isShown);
}

float BenchSettings::textScale() const
{
    const auto scale = static_cast<float> (file_.getDoubleValue ("textScale", 1.0));
    return std::isfinite (scale) && scale > 0.0f ? scale : 1.0f;
}

void BenchSettings::setTextScale (float scale)
{
    file_.setValue ("textScale", static_cast<double> (scale));
}

Series BenchSettings::series() const
{
    return chosen ("series", 5, Series::e12);
}

void BenchSettings::setSeries (Series series)
{
    file_.setValue ("series", static_cast<int> (series));
}

LevelUnit BenchSettings::levelUnit() const
{
    return chosen ("levelUnit", static_cast<int> (levelUnits.size()), LevelUnit::voltsPeakToPeak);
}

void BenchSettings::setLevelUnit (LevelUnit unit)
{
    file_.setValue ("levelUnit", static_cast<int> (unit));
}

/// A place in a list of `count`, or `usual` where none of them is given.
int BenchSettings::placeOf (const juce::String& key, int count, int usual) const
{
    const auto text = file_.getValue (key).trim();
    constexpr int mostDigits = 3;
    if (text.isEmpty() || text.length() > mostDigits || ! text.containsOnly ("0123456789"))
        return usual;
    const int place = text.getIntValue();
    return place < count ? place : usual;
}

/// One of scopeSteps (lowest, highest), or nothing.
std::optional<double> BenchSettings::stepOf (const juce::String& key, double lowest, double highest) const
{
    constexpr double rounding = 1e-6; // of the text in the file
    const double given = file_.getDoubleValue (key, 0.0);
    for (const double step : scopeSteps (lowest, highest))
        if (std::abs (given - step) <= rounding * step)
            return step;
    return {};
}

void BenchSettings::setStep (const juce::String& key, std::optional<double> step)
{
    if (step)
        file_.setValue (key, *step);
    else
        file_.removeValue (key);
}

ReadingChoices BenchSettings::readingManner() const
{
    ReadingChoices choices;
    choices.kind = chosen ("reading", static_cast<int> (readingKinds.size()), choices.kind);
    choices.hasPhase = file_.getBoolValue ("readingPhase", choices.hasPhase);
    choices.wave.voltsPerDivision = stepOf ("waveVolts", ScopeRange::lowestVolts, ScopeRange::highestVolts);
    choices.wave.secondsPerDivision = stepOf ("waveSeconds", ScopeRange::lowestSeconds, ScopeRange::highestSeconds);
    choices.level = chosen ("compassLevel", 2, choices.level);
    choices.stageKeys = chosen ("stageKeys", 2, choices.stageKeys);
    return choices;
}

void BenchSettings::setReadingManner (const ReadingChoices& choices)
{
    file_.setValue ("reading", static_cast<int> (choices.kind));
    file_.setValue ("readingPhase", choices.hasPhase);
    setStep ("waveVolts", choices.wave.voltsPerDivision);
    setStep ("waveSeconds", choices.wave.secondsPerDivision);
    file_.setValue ("compassLevel", static_cast<int> (choices.level));
    file_.setValue ("stageKeys", static_cast<int> (choices.stageKeys));
}

MaskShelf::Place BenchSettings::targetMask() const
{
    const auto path = file_.getValue ("targetMaskFile");
    if (juce::File::isAbsolutePath (path))
        return { {}, juce::File (path) };
    return { file_.getValue ("targetMask"), {} };
}

void BenchSettings::setTargetMask (const MaskShelf::Place& place)
{
    file_.setValue ("targetMask", place.name);
    file_.setValue ("targetMaskFile", place.file.getFullPathName());
}

LevelMeasure BenchSettings::trialMeasure() const
{
    return chosen ("trialMeasure", 2, LevelMeasure::aWeighted);
}

void BenchSettings::setTrialMeasure (LevelMeasure measure)
{
    file_.setValue ("trialMeasure", static_cast<int> (measure));
}

juce::StringArray BenchSettings::unheardMidi() const
{
    auto names = juce::StringArray::fromLines (file_.getValue ("unheardMidi"));
    names.removeEmptyStrings();
    return names;
}

void BenchSettings::setUnheardMidi (const juce::StringArray& names)
{
    file_.setValue ("unheardMidi", names.joinIntoString ("\n"));
}

juce::String BenchSettings::windowState() const
{
    return file_.getValue ("window");
}

void BenchSettings::setWindowState (const juce::String& state)
{
    file_.setValue ("window", state);
}

std::unique_ptr<juce::XmlElement> BenchSettings::audioState() const
{
    return file_.getXmlValue ("audio");
}

void BenchSettings::setAudioState (const juce::XmlElement* state)
{
    if (state != nullptr)
        file_.setValue ("audio", state);
}

} // namespace stopwright
