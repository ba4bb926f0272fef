// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FindingSearch.h"

#include <algorithm>

namespace stopwright
{

namespace
{

::testing::AssertionResult withList (::testing::AssertionResult result, const std::vector<Finding>& findings)
{
    for (const auto& finding : findings)
        result << "\n  " << (finding.severity == Severity::error ? "error" : "warning") << " [" << finding.subject
               << "] " << finding.sentence;
    return result;
}

} // namespace

::testing::AssertionResult
    finds (const Netlist& netlist, Severity severity, const std::string& subject, const std::vector<std::string>& words)
{
    const auto findings = findFaults (netlist);
    const auto matches = [&] (const Finding& finding)
    {
        const auto holds = [&finding] (const std::string& word)
        { return finding.sentence.find (word) != std::string::npos; };
        return finding.severity == severity && finding.subject == subject
               && std::all_of (words.begin(), words.end(), holds);
    };
    if (std::any_of (findings.begin(), findings.end(), matches))
        return ::testing::AssertionSuccess();
    return withList (::testing::AssertionFailure() << "not found; all findings:", findings);
}

::testing::AssertionResult
    refuses (const Netlist& netlist, const std::string& subject, const std::vector<std::string>& words)
{
    return finds (netlist, Severity::error, subject, words);
}

::testing::AssertionResult
    warns (const Netlist& netlist, const std::string& subject, const std::vector<std::string>& words)
{
    const auto accepted = isAccepted (netlist);
    return accepted ? finds (netlist, Severity::warning, subject, words) : accepted;
}

::testing::AssertionResult isClean (const Netlist& netlist)
{
    const auto findings = findFaults (netlist);
    return withList (::testing::AssertionResult (findings.empty()), findings);
}

::testing::AssertionResult isAccepted (const Netlist& netlist)
{
    const auto findings = findFaults (netlist);
    return withList (::testing::AssertionResult (findings.empty() || findings.front().severity == Severity::warning),
                     findings);
}

} // namespace stopwright
