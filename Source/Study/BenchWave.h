// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/BenchPoint.h"
#include "Study/ProbeLoad.h"

#include <optional>
#include <vector>

namespace stopwright
{

/// One key as a scope would show it at a place. `waves` are single periods in equal steps, one for each pitch class (a
/// borrowed mutation is of another), t = 0 where the generators' squares rise; `baseHz` is one over each period.
struct BenchWave
{
    std::vector<double> baseHz;
    std::vector<std::vector<double>> waves;
};

/// With the load connected, or without any. Edges are rounded as WaveMaker says, within a thousandth of a period. No
/// waves when no generator sounds for the key. Threading: [control].
/// Fails: Error on a key outside 0 .. 127.
BenchWave benchWave (const BenchPoint& point, int key, const std::optional<ProbeLoad>& load = {});

} // namespace stopwright
