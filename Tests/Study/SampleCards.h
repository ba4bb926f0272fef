// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/KeySource.h"

#include <string>

namespace stopwright
{

/// A tap of 2 V peak to peak (a square of +-1 V), ideal, at node "in".
Tap sampleTap (const std::string& name, WaveKind kind, const std::string& footage = "8");

/// A coil and a capacitor across the signal, fed by 47 k and loaded by 100 k: 1 H with 150 ohms of winding, 22 nF.
Card shuntTankCard (WaveKind kind);

/// Three sections of 47 k and 10 nF, unbuffered, on a square.
Card threeSectionCard();

/// Each tap through 10 k to the output, which is nothing else: the mean of the taps.
Card straightCard (std::vector<Tap> taps);

/// Sixty-one keys in equal temperament at 440 Hz whose highest generator is C9.
KeySource keysUpToC9();

} // namespace stopwright
