// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/ConductionPaths.h"

#include <vector>

namespace stopwright
{

/// Which nodes the output of an op-amp can move, by way of parts and of other op-amps.
///
/// A path ends at common, at a node that an ideal tap or supply holds and at the output of another op-amp; it enters that
/// amplifier through either input and leaves at its output.
/// Threading: [control].
class FeedbackPaths
{
public:
    FeedbackPaths (const Netlist& netlist, const NodeMap& nodes, PathKind kind);

    /// Whether a path leads from `opAmp` (one of the netlist's parts) back to its own plus or minus input.
    bool reachesPlus (const Part& opAmp) const { return reaches (opAmp, 0); }

    bool reachesMinus (const Part& opAmp) const { return reaches (opAmp, 1); }

private:
    bool reaches (const Part& opAmp, std::size_t input) const;

    const NodeMap& nodes_;
    std::vector<std::vector<int>> neighbours_;
    std::vector<bool> isHeld_; ///< by an ideal tap or supply, or an op-amp
};

} // namespace stopwright
