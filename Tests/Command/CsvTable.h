// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <vector>

namespace stopwright
{

/// Rows of a CSV text by the names of its header, cells in quotes unwrapped (RFC 4180). Every row has as many cells as
/// the header, or it is a failed expectation.
std::vector<std::map<std::string, std::string>> csvTable (const std::string& text);

} // namespace stopwright
