// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/MaskReading.h"
#include "Units/Engineering.h"

#include <string>

namespace stopwright
{

// How readings speak. UTF-8. Threading: [control].

/// So many decimals, with a real minus sign: "−7.2"; "0" never has one.
std::string signedText (double value, int decimals);

/// "−7.2 dB", or "none" for what lies below −199 dB.
std::string decibelText (double value);

/// "−896 mV", with a real minus sign.
std::string voltsText (double volts);

/// "3", or "1.5" for one that is no multiple of the 8 ft pitch.
std::string partialText (double harmonic);

/// "C4, 262 Hz".
std::string keyText (int key, double keyHz);

/// "common practice, no source", "published: A. Author, A Book".
std::string originText (Certainty certainty, const std::string& source);

/// Whether a tone keeps to a mask: "all 10 within tolerance", "8 of 10 within tolerance, 1 absent", "nothing of it on this key".
std::string fitText (const MaskFit& fit);

} // namespace stopwright
