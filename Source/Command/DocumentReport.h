// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace stopwright
{

/// What was found out about a document: lines that say what it is, and sentences that say what is wrong or doubtful.
struct DocumentReport
{
    std::string description; ///< whole lines
    std::vector<std::string> errors;
    std::vector<std::string> warnings;
};

} // namespace stopwright
