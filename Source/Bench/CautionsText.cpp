// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/CautionsText.h"

#include <stopwright/Cautions.h>

namespace stopwright
{

juce::String cautionsForReading()
{
    const auto whole = juce::String::fromUTF8 (cautionsText.data(), static_cast<int> (cautionsText.size()));
    const auto body = whole.fromFirstOccurrenceOf ("\n", false, false).trim();
    const auto bullet = juce::String::charToString (0x2022) + " ";
    return ("\n" + body).replace ("\n- ", "\n\n" + bullet).trim();
}

} // namespace stopwright
