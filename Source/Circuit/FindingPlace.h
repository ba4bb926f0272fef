// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/NetlistCheck.h"

#include <string>

namespace stopwright
{

/// What on a drawing a finding is about, so that it can be marked there.
struct FindingPlace
{
    enum class Kind
    {
        network, ///< all of it: too many parts, no output ...
        part,
        tap,
        node
    };

    Kind kind = Kind::network;
    std::string name; ///< empty for the network

    bool operator== (const FindingPlace&) const = default;
};

/// The place of a finding in the netlist that it was found in. Where a part or tap is called like a node, the part or tap.
/// Threading: [control].
FindingPlace findingPlace (const Finding& finding, const Netlist& netlist);

} // namespace stopwright
