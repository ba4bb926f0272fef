// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Part.h"

#include <string>
#include <vector>

namespace stopwright
{

/// Name of circuit common in every netlist.
inline constexpr std::string_view commonNode = "0";

/// A signal that enters the network: an ideal voltage behind `sourceOhms` (0 is allowed: an ideal source).
struct SourcePort
{
    std::string name;
    std::string node;
    double sourceOhms = 0.0;
};

/// A network as drawn: where signals enter, the parts, and the node that is listened to. Plain data, not checked:
/// see NetlistCheck.
struct Netlist
{
    std::vector<SourcePort> sources;
    std::vector<Part> parts;
    std::string output;
};

} // namespace stopwright
