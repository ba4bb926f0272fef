// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/NetlistCheck.h"

#include <gtest/gtest.h>
#include <string>
#include <vector>

namespace stopwright
{

/// Whether findFaults gives a finding of this severity about `subject` whose sentence holds all of `words`. The failure
/// text lists what was found.
::testing::AssertionResult finds (const Netlist& netlist,
                                  Severity severity,
                                  const std::string& subject,
                                  const std::vector<std::string>& words);

::testing::AssertionResult
    refuses (const Netlist& netlist, const std::string& subject, const std::vector<std::string>& words);
::testing::AssertionResult
    warns (const Netlist& netlist, const std::string& subject, const std::vector<std::string>& words);

/// Whether there is no finding at all, or no error.
::testing::AssertionResult isClean (const Netlist& netlist);
::testing::AssertionResult isAccepted (const Netlist& netlist);

} // namespace stopwright
