// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Instrument.h"

#include <filesystem>
#include <string>

namespace stopwright
{

/// What an instrument is made of, in whole lines: tuning, keyboards, buses, preamps, outlets and tablets.
/// Threading: [control]. Fails: Error on a tuning that cannot be made.
std::string describe (const Instrument& instrument, const std::filesystem::path& file);

} // namespace stopwright
