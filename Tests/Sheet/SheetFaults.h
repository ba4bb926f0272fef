// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/SchematicLayout.h"

#include <string>
#include <vector>

namespace stopwright
{

/// Everything that is wrong with a layout as a drawing of the card, a sentence each: parts that are missing or lie on each
/// other, texts on anything, wires that share a step with another node's, run through a symbol, end nowhere or leave a
/// lead of their node out, dots without a junction, taps to the right of what they feed, anything to the right of the
/// output, parts across the signal that do not stand with common below, anything off the sheet. It shares no code with
/// what makes layouts, except textBox.
std::vector<std::string> sheetFaults (const Card& card, const SchematicLayout& layout);

/// How often wires of different nodes cross.
int crossingsOf (const SchematicLayout& layout);

} // namespace stopwright
