// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// What the words behind "stopwright-bench" ask for.
struct CommandWords
{
    std::optional<int> exitStatus {}; ///< nothing: go on and open the window
    std::string text {};              ///< to standard output when the status is 0, else to standard error

    std::string document {};           ///< empty: the demonstration organ
    std::string midiFile {};           ///< to play once the sound runs; empty: none
    std::vector<std::string> stops {}; ///< tablets to draw instead of the document's; empty: those
};

CommandWords readCommandWords (int argumentCount, const char* const* arguments);

} // namespace stopwright
