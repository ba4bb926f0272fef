// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FindingPlace.h"

#include <algorithm>

namespace stopwright
{

FindingPlace findingPlace (const Finding& finding, const Netlist& netlist)
{
    if (finding.subject.empty())
        return {};
    const auto isSubject = [&finding] (const auto& item) { return item.name == finding.subject; };
    if (std::ranges::any_of (netlist.parts, isSubject))
        return { FindingPlace::Kind::part, finding.subject };
    if (std::ranges::any_of (netlist.sources, isSubject))
        return { FindingPlace::Kind::tap, finding.subject };
    return { FindingPlace::Kind::node, finding.subject };
}

} // namespace stopwright
