// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/HeadroomKeys.h"
#include "Study/SilentStops.h"

#include <string>
#include <vector>

namespace stopwright
{

// What `stopwright headroom` says about the keys that are held and about what they do not reach. Threading: [control].

/// "10 keys on Upper manual and 7 keys on Pedal held".
std::string heldWords (const std::vector<HeldDivision>& divisions);

/// One sentence each: keys that are left away, drawn stops that stay silent and why, drawn couplers that play nothing, and
/// a passive bus whose load cannot hold the input behind it.
std::vector<std::string> headroomRemarks (const Instrument& instrument,
                                          const std::vector<HeldDivision>& divisions,
                                          const std::vector<SilentStop>& silent);

/// Fails: Error when all drawn stops are silent for the keys that are held, with the reasons.
void requireAnySound (const Instrument& instrument, const std::vector<SilentStop>& silent);

} // namespace stopwright
