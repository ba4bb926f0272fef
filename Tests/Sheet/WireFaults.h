// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/SchematicLayout.h"

#include <string>
#include <vector>

namespace stopwright
{

/// A straight piece of wire.
struct WirePiece
{
    std::string node;
    DrawingPoint from;
    DrawingPoint to;

    DrawingBox box() const;
};

std::vector<WirePiece> wirePieces (const SchematicLayout& layout);

/// What is wrong with the wires alone: see sheetFaults.
std::vector<std::string> wireFaults (const SchematicLayout& layout);

} // namespace stopwright
