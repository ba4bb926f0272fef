// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Part.h"
#include "Sheet/SheetGrid.h"

#include <vector>

namespace stopwright
{

/// Where a lead of a symbol ends, measured from the symbol's middle, and the way a wire leaves it.
struct SymbolLead
{
    GridPoint end;
    GridPoint outward;
};

/// The leads of a part's symbol as it lies unturned, in the order of Part::nodes:
/// two leads: left, right - potentiometer: left, up (the wiper), right - op-amp: plus below, minus above, output to the
/// right - transistor: collector above, base to the left, emitter below. Threading: [any].
std::vector<SymbolLead> symbolLeads (const PartValue& value);

/// Of a tap: to the right. Of the output's terminal: to the left.
SymbolLead tapLead();
SymbolLead outputLead();

} // namespace stopwright
