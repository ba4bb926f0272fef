// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/CardGraph.h"
#include "Sheet/SymbolLeads.h"
#include "Sheet/SymbolPose.h"

#include <vector>

namespace stopwright
{

/// How an element stands in the signal path.
enum class Stance
{
    across,   ///< in a row of its own between the nodes at its left and right
    hanging,  ///< upright below the one signal node it has
    standing, ///< upright above it, its other end on a rail above common
    loose     ///< without a signal node
};

/// The stance of an element, how its symbol lies, and what its leads go to: `leads` as they lie, in the order of the
/// element's nodes.
struct ElementStance
{
    Stance stance = Stance::across;
    SymbolPose pose;
    std::vector<SymbolLead> leads;
};

/// Works out the stance from the layers of the nodes. Threading: [control].
ElementStance
    stanceOf (const Card& card, const CardGraph& graph, const std::vector<int>& layers, const GraphElement& element);

/// The leads of an element's symbol in that pose.
std::vector<SymbolLead> posedLeads (const Card& card, const GraphElement& element, SymbolPose pose);

} // namespace stopwright
