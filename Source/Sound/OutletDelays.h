// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Instrument.h"

#include <vector>

namespace stopwright
{

/// How far the sound of each outlet is behind the others' when it is played, in seconds, [outlet]: a rotary speaker looks
/// ahead of itself, all else is on time. Units/range: samples per second, as OutletStage. Threading: [control].
/// Fails: Error with a sentence that names the outlet.
std::vector<double> outletDelaySeconds (const Instrument& instrument, double deviceRateHz);

} // namespace stopwright
