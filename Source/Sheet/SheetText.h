// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"
#include "Sheet/CardGraph.h"

#include <string>
#include <vector>

namespace stopwright
{

/// A line of the label beside a symbol. A caption is set smaller and fainter.
struct LabelLine
{
    std::string text;
    bool isName = false;
    bool isCaption = false;
};

/// What stands beside an element: its name and value ("27k", "6n8", "1H2" to three figures), a coil's winding resistance,
/// a potentiometer's position, a tap's wave with its footage, and its level with what it lies behind. Threading: [control].
std::vector<LabelLine> labelLines (const Card& card, const GraphElement& element);

} // namespace stopwright
