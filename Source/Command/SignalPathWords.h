// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/MixingBus.h"
#include "Organ/Outlet.h"
#include "Organ/Preamp.h"

#include <string>

namespace stopwright
{

// The way from the stops out of the organ, in words for one line each. Threading: [control].

/// "Reeds: passive, 10.0 kΩ and 1.00 nF to common".
std::string mixingBusWords (const MixingBus& bus);

/// "Gain: amplifier, 1.00 µF into 47.0 kΩ (3.39 Hz), gain 4 (12.0 dB), -6 to +6 V". A follower is told with the voltage
/// it can sink to, its standing current times the emitter resistance parallel to the load.
std::string stageWords (const PreampStage& stage);

/// "Tremulant: tremulant of 6.00 Hz, depth 0.3 (5.38 dB from peak to peak), on, swell down to -40 dB".
std::string outletWords (const Outlet& outlet);

} // namespace stopwright
