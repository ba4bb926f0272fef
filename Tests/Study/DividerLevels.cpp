// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/DividerLevels.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <vector>

namespace stopwright::test
{

namespace
{

struct Divider
{
    std::int64_t halfTicks;
    std::int64_t nextEdge;
    int weight;
    int state;
};

} // namespace

std::map<int, double> dividerLevels (std::int64_t divisorC, std::int64_t divisorE, std::int64_t divisorG)
{
    std::vector<Divider> dividers;
    const auto add = [&dividers] (std::int64_t divisor, const std::array<int, 6>& weights)
    {
        // Octave 2 .. 7 of a divisor for octave 8, in half ticks of the clock.
        for (std::size_t octave = 0; octave < weights.size(); ++octave)
            if (weights[octave] > 0)
                dividers.push_back ({ divisor << (6 - octave), divisor << (6 - octave), weights[octave], 1 });
    };
    add (divisorC, { 1, 2, 2, 2, 1, 0 }); // C2 C3 C4 C5 at 8 ft, C3 C4 C5 C6 at 4 ft
    add (divisorE, { 0, 1, 2, 2, 1, 0 });
    add (divisorG, { 1, 2, 2, 1, 0, 0 });
    std::map<int, double> lasting;
    const std::int64_t end = 2 * 64 * divisorC * divisorE * divisorG;
    int level = 20;
    for (std::int64_t now = 0; now < end;)
    {
        std::int64_t next = end;
        for (const Divider& divider : dividers)
            next = std::min (next, divider.nextEdge);
        lasting[level] += static_cast<double> (next - now) / static_cast<double> (end);
        now = next;
        for (Divider& divider : dividers)
            if (divider.nextEdge == now)
            {
                divider.nextEdge += divider.halfTicks;
                divider.state = -divider.state;
                level += 2 * divider.weight * divider.state;
            }
    }
    return lasting;
}

} // namespace stopwright::test
