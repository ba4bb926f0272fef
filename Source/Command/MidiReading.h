// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/MidiPhrase.h"

#include <filesystem>
#include <string>
#include <vector>

namespace stopwright
{

/// "C2 to C7". Threading: [control].
std::string compassWords (const Compass& compass);

/// Reads a standard MIDI file for the keyboards that are there. Threading: [control]. Fails: Error (a file that is none,
/// nothing in it that these keyboards play).
MidiPhrase readMidiPhrase (const std::filesystem::path& file, const ChannelCompasses& channels);

/// Which notes of the file are left out and why, a sentence each; none when all are played. Threading: [control].
std::vector<std::string>
    leftOutSentences (const std::filesystem::path& file, const MidiPhrase& played, const ChannelCompasses& channels);

} // namespace stopwright
