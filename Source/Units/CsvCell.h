// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace stopwright
{

/// A text as a cell of a table of comma-separated values: as it is, or in double quotes with its own doubled where it
/// holds a comma, a quote or the end of a line. Threading: [control]. Source: RFC 4180, 2, rules 5 to 7.
std::string csvCell (std::string_view text);

} // namespace stopwright
