// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/UsualPlaces.h"

namespace stopwright
{

juce::File fileFrom (const std::filesystem::path& path)
{
    return path.empty() ? juce::File() : juce::File (juce::String::fromUTF8 (path.c_str()));
}

juce::File folderOf (const BenchDocument& document)
{
    const auto folder = document.folder();
    return folder.empty() ? juce::File::getSpecialLocation (juce::File::userHomeDirectory) : fileFrom (folder);
}

juce::File demonstrationOrgan()
{
    const auto executable = juce::File::getSpecialLocation (juce::File::currentExecutableFile);
    auto found = findDemonstrationOrgan (executable.getFullPathName().toStdString());
    if (found.empty())
        found = findDemonstrationOrgan (STOPWRIGHT_BUILD_ROOT "/Presets");
    return fileFrom (found);
}

juce::File demonstrationPhrase()
{
    const auto organ = demonstrationOrgan();
    const auto phrase = organ.getSiblingFile ("DemonstrationPhrase.mid");
    return organ != juce::File() && phrase.existsAsFile() ? phrase : juce::File();
}

juce::File masksFolder()
{
    const auto organ = demonstrationOrgan();
    const auto folder = organ.getSiblingFile ("Masks");
    return organ != juce::File() && folder.isDirectory() ? folder : juce::File();
}

} // namespace stopwright
