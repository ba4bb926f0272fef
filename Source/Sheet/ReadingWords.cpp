// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/ReadingWords.h"

#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"
#include "Units/Pitch.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace stopwright
{

std::string signedText (double value, int decimals)
{
    std::array<char, 400> digits {};
    const auto end = std::to_chars (digits.data(), digits.data() + digits.size(), std::abs (value),
                                    std::chars_format::fixed, decimals)
                         .ptr;
    const std::string magnitude (digits.data(), end);
    const bool isZero = magnitude.find_first_of ("123456789") == std::string::npos;
    return value < 0.0 && ! isZero ? "\u2212" + magnitude : magnitude;
}

std::string decibelText (double value)
{
    constexpr double noneBelowDb = -199.0;
    return std::isfinite (value) && value >= noneBelowDb ? signedText (value, 1) + " dB" : std::string ("none");
}

std::string voltsText (double volts)
{
    const auto magnitude = formatForReading (std::abs (volts), Quantity::voltage);
    return volts < 0.0 ? "\u2212" + magnitude : magnitude;
}

std::string partialText (double harmonic)
{
    constexpr double rounding = 1e-6;
    return signedText (harmonic, std::abs (harmonic - std::round (harmonic)) < rounding ? 0 : 1);
}

std::string keyText (int key, double keyHz)
{
    constexpr int last = 127;
    return keyName (std::clamp (key, 0, last)) + ", " + formatForReading (keyHz, Quantity::frequency);
}

std::string originText (Certainty certainty, const std::string& source)
{
    const std::string word (certaintyWord (certainty));
    if (source.empty())
        return certainty == Certainty::commonPractice ? word + ", no source" : word;
    return word + ": " + printable (source, DocumentLimits::sourceCharacters);
}

std::string fitText (const MaskFit& fit)
{
    if (fit.compared == 0)
        return "nothing of it on this key";
    const auto all = std::to_string (fit.compared);
    if (fit.outside == 0)
        return std::string ("all ").append (all).append (" within tolerance");
    const auto inside = std::to_string (fit.compared - fit.outside) + " of " + all + " within tolerance";
    return fit.absent == 0 ? inside : inside + ", " + std::to_string (fit.absent) + " absent";
}

} // namespace stopwright
