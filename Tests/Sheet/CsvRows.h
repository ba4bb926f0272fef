// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace stopwright::test
{

/// The cells of a CSV text, read as RFC 4180 has it: rows end in CR LF, quotes doubled within quotes. Fails: throws
/// std::runtime_error where the text is none.
std::vector<std::vector<std::string>> csvRows (std::string_view text);

/// The number in a cell of the column of that name; row 0 is the one below the header.
double csvNumberAt (const std::vector<std::vector<std::string>>& rows, std::size_t row, const std::string& column);

} // namespace stopwright::test
