// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/SchematicLayout.h"

#include <string>

namespace stopwright
{

/// What a node of one sheet is called on another of the same card, from before or after edits, undo and redo, or of the
/// other trial: the node that has its leads. Where they were parted, the one that kept the name, else the one that has most
/// of them. A node all of whose parts are gone is the one of its name. Empty when there is none. Threading: [control].
std::string followedNode (const SchematicLayout& from, const SchematicLayout& to, const std::string& node);

} // namespace stopwright
