// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"
#include "Organ/Instrument.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// The cards an instrument names, in its own order. None where a tablet is blank, a stage is no circuit, or the card
/// could not be used, which then stands in `errors`: one sentence each, with the tablet or stage in it.
struct InstrumentCards
{
    std::vector<std::optional<Card>> ofStops;               ///< [stop]
    std::vector<std::vector<std::optional<Card>>> ofStages; ///< [preamp][stage]
    std::vector<std::string> errors;
};

/// Where a card lies that an instrument's document names. Symbolic links are the owner's own affair and are followed.
/// Threading: [control]. Fails: Error on an absolute path and on one that leaves the document's folder by "..".
std::filesystem::path cardPath (const std::filesystem::path& document, const std::string& cardFile);

/// Reads the cards of all stops and circuit stages, each file once. Whether their networks can be solved is not looked
/// at (NetlistCheck does); a stage's card must have exactly one tap. `document` is where the instrument was read from.
/// Threading: [control].
InstrumentCards findInstrumentCards (const Instrument& instrument, const std::filesystem::path& document);

/// The same for those who need them all. Fails: Error with the first of the errors.
InstrumentCards instrumentCards (const Instrument& instrument, const std::filesystem::path& document);

} // namespace stopwright
