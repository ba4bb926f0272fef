// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>

#include <string>
#include <string_view>

namespace stopwright
{

/// A JSON document in memory, fields in the order written. For the .cpp files of this folder only: nobody else needs to
/// know which library it is.
using JsonTree = nlohmann::ordered_json;

/// Reads JSON from text of any origin without recursion and within DocumentLimits. A byte order mark is passed over.
/// Besides what is not JSON, it refuses invalid UTF-8, numbers too large for a double and a field that stands twice in
/// an object. Threading: [control]. Fails: DocumentError with the line.
JsonTree parseJson (std::string_view text, const std::string& origin);

/// JSON text for people: two-space indent, and what fits on a line of 120 columns stands on one (a part, a tap).
/// Threading: [control].
std::string layOutJson (const JsonTree& tree);

} // namespace stopwright
