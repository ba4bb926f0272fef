// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FindingList.h"

#include <iterator>
#include <utility>

namespace stopwright
{

void FindingList::add (std::vector<Finding>& list, Finding finding)
{
    if (sentences_.insert (finding.sentence).second)
        list.push_back (std::move (finding));
}

void FindingList::addError (std::string_view subject, std::string sentence)
{
    add (errors_, { Severity::error, std::string (subject), std::move (sentence) });
}

void FindingList::addWarning (std::string_view subject, std::string sentence)
{
    add (warnings_, { Severity::warning, std::string (subject), std::move (sentence) });
}

std::vector<Finding> FindingList::take() &&
{
    std::vector<Finding> all = std::move (errors_);
    std::move (warnings_.begin(), warnings_.end(), std::back_inserter (all));
    return all;
}

} // namespace stopwright
