// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace stopwright
{

// Keys are MIDI note numbers, 0 .. 127: C4 = 60 (the key that sounds middle C on an 8 ft stop), A4 = 69.

/// Reads the name of a key: "C4", "F#3", "Bb2", also lower case and with the signs ♯ and ♭.
///
/// Units/range: C-1 (0) .. G9 (127).
/// Threading: [control]
/// Fails: Error with the text when it is no name of a key or out of range.
int parseKey (std::string_view text);

/// The name of a key, with sharps: "C4", "F#3". The inverse of parseKey.
///
/// Threading: [control]
/// Fails: Error when the key is not in 0 .. 127.
std::string keyName (int key);

/// Pitch of a key at 8 ft in equal temperament: referenceHz 2^((key - 69) / 12).
///
/// Units/range: key may be fractional; referenceHz is the pitch of A4.
/// Threading: [any]
/// Source: ISO 16:1975 for A4 = 440 Hz
double equalTemperedHz (double key, double referenceHz = 440.0) noexcept;

/// Interval from one frequency to another: 1200 log2 (toHz / fromHz), positive when the second is higher.
///
/// Threading: [any]
double centsBetween (double fromHz, double toHz) noexcept;

} // namespace stopwright
