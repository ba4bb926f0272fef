// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/PhraseOptions.h"
#include "Organ/InstrumentCards.h"

#include <filesystem>
#include <string>
#include <vector>

namespace stopwright
{

/// An instrument with at least one stop drawn that sounds, and its cards.
struct SelectedInstrument
{
    Instrument instrument;
    InstrumentCards cards;
};

/// Draws these tablets and retires all others; "all" alone, where no tablet is called so, draws every stop that can be heard
/// and no coupler. Threading: [control]. Fails: Error (a tablet that is not there or has no sound).
void drawOnly (Instrument& instrument, const std::vector<std::string>& tablets);

/// Reads an instrument with its cards. `tablets`, unless empty, are drawn instead of those the document says are:
/// stops, and couplers. Threading: [control]. Fails: Error (a document or card that cannot be used, a tablet that is not
/// there or has no sound, nothing drawn).
SelectedInstrument selectInstrument (const std::filesystem::path& file, const std::vector<std::string>& tablets);

/// The tablets that are drawn: stops that sound, then couplers. Threading: [control].
std::vector<std::string> drawnTablets (const SelectedInstrument& selected);

/// Its divisions by MIDI channels; held keys on the division of that name, or where the first drawn stop is when it is
/// empty. Threading: [control]. Fails: Error (no such division).
PhraseKeyboards keyboardsOf (const SelectedInstrument& selected, const std::string& division);

} // namespace stopwright
