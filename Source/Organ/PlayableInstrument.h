// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Instrument.h"

namespace stopwright
{

/// The instrument as it is played: one without mixing buses gets one ideal virtual earth of 47 kilohm with every stop on
/// it, and a main outlet. Threading: [control].
Instrument playableInstrument (Instrument instrument);

} // namespace stopwright
