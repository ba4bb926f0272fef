// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"

#include <string>
#include <vector>

namespace stopwright
{

/// One number or choice of a part or tap as a text. The label is empty for what the part is called by, its value.
struct NumberText
{
    std::string label; ///< "", "winding resistance" ..
    std::string text;  ///< "4k7", "open", "none"
};

/// In a fixed order for each kind of part, so that two of a kind can be laid side by side.
using NumberTexts = std::vector<NumberText>;

/// Values as documents write them, to the last digit: two are alike when their texts are. What is not stated is "none", and
/// an amplifier without limits "ideal". Threading: [control], like all of these.
NumberTexts textsOf (const PartValue& value);

/// Wave, footage, level, source resistance, node, polarity.
NumberTexts textsOf (const Tap& tap);

/// "resistor 10k", "npn transistor"; "staircase of 4 ranks 8 ft".
std::string summaryOf (const Part& part);
std::string summaryOf (const Tap& tap);

/// "staircase of 4 ranks", "pulse, duty 0.25".
std::string waveText (const Wave& wave);

/// "t, 0"
std::string leadsText (const Part& part);

/// "5 %", "none".
std::string toleranceText (const Part& part);

/// Whether the leads go to the same nodes: in the same order, or in any where a part has no direction. Parts of different
/// kinds are told apart by their leads' order.
bool joinsTheSame (const Part& a, const Part& b);

} // namespace stopwright
