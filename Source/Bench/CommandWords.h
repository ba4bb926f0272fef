// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

namespace stopwright
{

/// What the words behind "stopwright-bench" ask for, when it is not a window.
struct CommandWords
{
    std::optional<int> exitStatus; ///< nothing: go on and open the window
    std::string text;              ///< to standard output when the status is 0, else to standard error
};

CommandWords readCommandWords (int argumentCount, const char* const* arguments);

} // namespace stopwright
