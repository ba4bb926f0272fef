// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace stopwright
{

/// A text as a cell of a CSV file: on one line, in double quotes, with its own doubled. Threading: [control].
/// Source: RFC 4180, 2.
std::string csvText (std::string_view text);

} // namespace stopwright
