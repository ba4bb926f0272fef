// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/FileDrop.h"

#include "Organ/InstrumentDocument.h"
#include "Units/Error.h"

#include <string>

namespace stopwright
{

namespace
{

constexpr const char* usable = "a card, an instrument, a target mask or a MIDI file";

/// The mark that a standard MIDI file begins with (The Complete MIDI 1.0 Detailed Specification, Standard MIDI Files).
bool isMidiFile (const juce::File& file)
{
    char first[4] = {};
    juce::FileInputStream stream (file);
    return stream.openedOk() && stream.read (first, 4) == 4 && std::string (first, 4) == "MThd";
}

juce::String quotedName (const juce::File& file)
{
    return "\"" + file.getFileName() + "\"";
}

} // namespace

FileDrop::FileDrop (BenchSession& session, DocumentActions& actions, PlayerActions& player)
    : session_ (session),
      actions_ (actions),
      player_ (player)
{}

juce::String FileDrop::promiseFor (const juce::StringArray& paths)
{
    if (paths.size() != 1)
        return juce::String ("One file at a time, please: ") + usable + ".";
    const juce::File file (paths[0]);
    if (file.hasFileExtension ("mid;midi"))
        return "Let go to play " + quotedName (file) + ".";
    return "Let go to open " + quotedName (file) + ".";
}

void FileDrop::take (const juce::StringArray& paths)
{
    if (paths.isEmpty())
        return;
    if (paths.size() == 1)
    {
        session_.attempt ([&] { takeFile (juce::File (paths[0])); });
        return;
    }
    session_.say (
        (juce::String (paths.size()) + " files were dropped; drop one at a time: " + usable + ".").toStdString());
}

void FileDrop::takeFile (const juce::File& file)
{
    if (file.isDirectory())
        throw Error ((quotedName (file) + " is a folder; drop one of its files: " + usable + ".").toStdString());
    if (isMidiFile (file) || file.hasFileExtension ("mid;midi"))
        player_.playNow (file);
    else if (file.hasFileExtension ("json"))
        takeDocument (file);
    else
        throw Error ((quotedName (file) + " is neither a document of this program (.json) nor a MIDI file (.mid); drop "
                      + usable + ".")
                         .toStdString());
}

void FileDrop::takeDocument (const juce::File& file)
{
    if (documentKind (file.getFullPathName().toStdString()) != "mask")
        actions_.openAfterAsking (file);
    else if (onMask)
        onMask (file);
    else
        throw Error ((quotedName (file)
                      + " is a target mask, which this window cannot show; \"stopwright mask\" compares a "
                        "stop with it.")
                         .toStdString());
}

} // namespace stopwright
