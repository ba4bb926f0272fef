// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/DocumentFields.h"
#include "Organ/Instrument.h"

namespace stopwright
{

// How an instrument is tuned and keyed. For the .cpp files of this folder only. Threading: [control].

/// The fields tuning, highestGenerator, aboveHighest and mutations of an instrument. Fails: DocumentError.
TuningStatement readTuning (FieldReader& instrument, UnknownFieldStore& unknown);
void writeTuning (const TuningStatement& statement, JsonTree& instrument, UnknownFieldSource& unknown);

/// The field keyer of an instrument, or of the keyed bus of that name. Fails: DocumentError.
KeyerSettings readKeyer (FieldReader& owner, UnknownFieldStore& unknown, const std::string& busName = {});
void writeKeyer (const KeyerSettings& settings,
                 JsonTree& owner,
                 UnknownFieldSource& unknown,
                 const std::string& busName = {});

/// The name of a key ("C4"). Fails: DocumentError.
int readKey (FieldReader& fields, std::string_view key, std::optional<std::string> fallback = {});

} // namespace stopwright
