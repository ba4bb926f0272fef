// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/SchematicLayout.h"

namespace stopwright
{

/// The layout with its letters up to `factor` times as large, each label as far as there is room around it, so that a sheet
/// that is shown small stays legible; symbols and wires stay where they are. Labels grow away from their symbol and meet
/// nothing that they did not meet before. Range: factor 1 or more; 1 changes nothing. Threading: [control].
SchematicLayout withLargerLetters (SchematicLayout layout, double factor);

} // namespace stopwright
