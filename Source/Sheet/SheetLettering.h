// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/SchematicLayout.h"

namespace stopwright
{

/// Writes what the taps and parts of a card stand at now into its sheet, every letter where it is: laying out anew takes
/// far longer, and moves what a hand is on. `layout` is of the same card with other numbers. Returns whether the sheet is
/// still good: every label fits its place, and no supply's rail has turned over. Threading: [control].
bool letterAnew (SchematicLayout& layout, const Card& card);

} // namespace stopwright
