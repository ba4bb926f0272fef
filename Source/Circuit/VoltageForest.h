// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/LinearForm.h"

#include <vector>

namespace stopwright
{

/// A spanning forest of the branches whose voltage is known (sources, op-amp outputs, capacitors): within a tree every
/// node's voltage is that of the tree's root plus or minus branch voltages. Node 0 is circuit common and stays the
/// root of its tree. Threading: [control].
/// Source: Chua, Lin, "Computer-aided analysis of electronic circuits", 1975, ch. 8 (normal tree); from memory.
class VoltageForest
{
public:
    explicit VoltageForest (int nodeCount);

    /// Adds branch `branch` with the voltage e[a] - e[b]. Returns false, and leaves the forest as it was, when a and b
    /// are in one tree already: the branch then closes a loop and its voltage follows from the others.
    bool join (int a, int b, int branch);

    int root (int node) const { return roots_[static_cast<std::size_t> (node)]; }

    /// e[node] - e[root (node)] as a sum of branch voltages.
    const LinearForm& potential (int node) const { return potentials_[static_cast<std::size_t> (node)]; }

private:
    std::vector<int> roots_;
    std::vector<LinearForm> potentials_;
};

} // namespace stopwright
