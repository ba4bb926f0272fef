// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/DocumentFields.h"
#include "Organ/Instrument.h"

#include <optional>

namespace stopwright
{

// Mixing buses, and the rails of whatever has rails. For the .cpp files of this folder only. Threading: [control].
// Fails: DocumentError.

MixingBus readMixingBus (FieldReader& fields, const Instrument& instrument, UnknownFieldStore& unknown);
JsonTree mixingBusTree (const MixingBus& bus, UnknownFieldSource& unknown);

/// The field rails, [low, high] with 0 V between them; none when absent.
std::optional<SupplyRails> readRails (FieldReader& fields);
void writeRails (const std::optional<SupplyRails>& rails, JsonTree& tree);

/// The field gainBandwidthHz; none when absent.
std::optional<double> readGainBandwidth (FieldReader& fields);
void writeGainBandwidth (const std::optional<double>& gainBandwidthHz, JsonTree& tree);

} // namespace stopwright
