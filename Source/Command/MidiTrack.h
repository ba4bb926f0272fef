// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/MidiBytes.h"
#include "Command/StandardMidiFile.h"

namespace stopwright
{

/// Reads one track chunk and adds its keys, swells and tempos to `file`. Threading: [control]. Fails: DocumentError.
void readMidiTrack (MidiBytes& track, StandardMidiFile& file);

} // namespace stopwright
