// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/VoltageForest.h"

#include <numeric>

namespace stopwright
{

VoltageForest::VoltageForest (int nodeCount)
    : roots_ (static_cast<std::size_t> (nodeCount)),
      potentials_ (static_cast<std::size_t> (nodeCount))
{
    std::iota (roots_.begin(), roots_.end(), 0);
}

bool VoltageForest::join (int a, int b, int branch)
{
    const int rootA = root (a);
    const int rootB = root (b);
    if (rootA == rootB)
        return false;

    // e[a] = e[rootA] + p[a], e[b] = e[rootB] + p[b] and e[a] - e[b] = v give the step from one root to the other.
    const bool keepsB = rootB == 0;
    LinearForm step = difference (potential (a), potential (b));
    step.add (branch, -1.0);
    const int goes = keepsB ? rootA : rootB;
    const int stays = keepsB ? rootB : rootA;
    const double direction = keepsB ? -1.0 : 1.0;

    for (std::size_t node = 0; node < roots_.size(); ++node)
    {
        if (roots_[node] != goes)
            continue;
        roots_[node] = stays;
        potentials_[node].add (step, direction);
    }
    return true;
}

} // namespace stopwright
