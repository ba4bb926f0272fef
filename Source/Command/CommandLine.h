// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <iosfwd>

namespace stopwright
{

/// The whole program: reads the command line, runs the job it names, and answers with the exit status.
///
/// Results go to `out`; every refusal is one sentence on `err`. Threading: [control]. Fails: never throws.
int runCommandLine (int argumentCount, const char* const* arguments, std::ostream& out, std::ostream& err);

} // namespace stopwright
