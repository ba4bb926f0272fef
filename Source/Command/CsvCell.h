// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace stopwright
{

/// A name or other foreign text as a cell of a CSV file: in double quotes, its own doubled, fit to stand in one line, so
/// that no comma, quote or line end in it breaks the table. Threading: [control]. Source: RFC 4180, 2.
std::string csvCell (std::string_view text);

} // namespace stopwright
