// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/DocumentReport.h"
#include "Organ/Instrument.h"

#include <filesystem>

namespace stopwright
{

/// Tuning, divisions, keyed buses and stops of an instrument, and what is wrong with it or with the cards it names.
/// `file` is where the instrument was read from, since its cards lie beside it. Threading: [control].
DocumentReport reportOf (const Instrument& instrument, const std::filesystem::path& file);

} // namespace stopwright
