// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/NetlistCheck.h"

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

/// Collects findings and gives them back errors first, otherwise in the order they were found; the same sentence is
/// kept once. Threading: [control].
class FindingList
{
public:
    void addError (std::string_view subject, std::string sentence);
    void addWarning (std::string_view subject, std::string sentence);

    bool hasErrors() const noexcept { return ! errors_.empty(); }

    std::vector<Finding> take() &&;

private:
    void add (std::vector<Finding>& list, Finding finding);

    std::set<std::string> sentences_;
    std::vector<Finding> errors_;
    std::vector<Finding> warnings_;
};

} // namespace stopwright
