// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace stopwright
{

/// What a number stands for; decides which unit a text may carry and which letters are prefixes in it.
enum class Quantity
{
    resistance,
    capacitance,
    inductance,
    frequency,
    voltage,
    current,
    time,
    number
};

/// Reads a value as it stands on a part or a drawing: "4k7", "R47", "2M2", "22n", "0.1u", "1H5", "680m", "47 kohm", "150".
///
/// Units/range: SI (ohm, farad, henry, hertz, volt, ampere, second); any finite number, the range is the caller's duty.
/// Threading: [control], locale-independent
/// Fails: Error with the text and what was expected; M on a capacitor or inductor is refused, for mega is never meant.
/// Source: IEC 60062:2016, 4.2 (letter and digit code); letters beyond it per the table in Engineering.cpp
double parseEngineering (std::string_view text, Quantity quantity);

/// Writes a value for a document: "4k7", "R47", "22n", "1H5", "150" for R, C and L, "4.7k" for the others.
///
/// Exact: parseEngineering (formatEngineering (x, q), q) == x to the last bit, with as few digits as that needs. Values
/// that have no prefix are written with an exponent. Threading: [control]
/// Fails: Error when the value is not finite.
/// Source: IEC 60062:2016, 4.2
std::string formatEngineering (double value, Quantity quantity);

/// Writes a value for the eye: "4.70 kΩ", "22.0 nF", "262 Hz" (UTF-8), rounded to significantDigits (1 .. 15).
///
/// Threading: [control]. A value that is not finite is shown as it is ("inf", "nan").
std::string formatForReading (double value, Quantity quantity, int significantDigits = 3);

} // namespace stopwright
