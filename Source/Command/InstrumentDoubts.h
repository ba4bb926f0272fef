// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/InstrumentCards.h"

#include <string>
#include <vector>

namespace stopwright
{

/// What is legal in an instrument and still makes something silent, one sentence each: blank tablets, stops, buses and
/// outlets that are not connected, and keys of a stop that no generator exists for. Threading: [control].
std::vector<std::string> doubtsOf (const Instrument& instrument, const InstrumentCards& cards);

} // namespace stopwright
