// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/DocumentError.h"
#include "Organ/Instrument.h"

#include <filesystem>
#include <string>
#include <string_view>

namespace stopwright
{

/// As parseCard, readCard, cardText and writeCard, for documents of kind "instrument".
Instrument parseInstrument (std::string_view text, std::string_view origin);
Instrument readInstrument (const std::filesystem::path& file);
std::string instrumentText (const Instrument& instrument);
void writeInstrument (const Instrument& instrument, const std::filesystem::path& file);

/// What a file claims to be, with the same guards: "card", "instrument" or "mask". Fails: DocumentError.
std::string documentKind (const std::filesystem::path& file);

/// Whether a file is an instrument and not a card, where either will do. Fails: DocumentError; so is a mask answered.
bool isInstrument (const std::filesystem::path& file);

} // namespace stopwright
