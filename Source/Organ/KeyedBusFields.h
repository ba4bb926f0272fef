// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/DocumentFields.h"
#include "Organ/Instrument.h"

namespace stopwright
{

// Keyed buses and the contacts under the keys. For the .cpp files of this folder only. Threading: [control].
// Fails: DocumentError.

KeyedBus readKeyedBus (FieldReader& fields, const Instrument& instrument, UnknownFieldStore& unknown);
JsonTree keyedBusTree (const KeyedBus& bus, UnknownFieldSource& unknown);

/// The field contacts, once the keyed buses have been read.
KeyContacts readContacts (FieldReader& document, const Instrument& instrument, UnknownFieldStore& unknown);

/// Left out when all contacts close at once and nothing is kept for them.
void writeContacts (const Instrument& instrument, JsonTree& document, UnknownFieldSource& unknown);

} // namespace stopwright
