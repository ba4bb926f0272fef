// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchSettings.h"

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

BenchSettings::BenchSettings (const juce::File& folder)
    : file_ (folder.getChildFile ("stopwright").getChildFile ("bench.settings"), options())
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

float BenchSettings::textScale() const
{
    return static_cast<float> (file_.getDoubleValue ("textScale", 1.0));
}

void BenchSettings::setTextScale (float scale)
{
    file_.setValue ("textScale", static_cast<double> (scale));
}

Series BenchSettings::series() const
{
    return static_cast<Series> (juce::jlimit (0, 4, file_.getIntValue ("series", static_cast<int> (Series::e12))));
}

void BenchSettings::setSeries (Series series)
{
    file_.setValue ("series", static_cast<int> (series));
}

LevelUnit BenchSettings::levelUnit() const
{
    const int last = static_cast<int> (levelUnits.size()) - 1;
    return static_cast<LevelUnit> (juce::jlimit (0, last, file_.getIntValue ("levelUnit", 0)));
}

void BenchSettings::setLevelUnit (LevelUnit unit)
{
    file_.setValue ("levelUnit", static_cast<int> (unit));
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
