// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// What the program tells the shell.
enum class ExitStatus
{
    success = 0,
    badInput = 1,     ///< a document, a file or a disc is at fault; one sentence stands on standard error
    wrongUsage = 2,   ///< the command line itself is at fault
    interrupted = 130 ///< stopped by a signal; nothing is left behind
};

} // namespace stopwright
