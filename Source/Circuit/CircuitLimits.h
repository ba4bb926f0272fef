// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// Largest network one card may hold. The audio thread rebuilds its matrices while a value turns, so their storage is
/// reserved for these sizes beforehand.
struct CircuitLimits
{
    static constexpr int nodes = 64;  ///< besides common
    static constexpr int states = 24; ///< capacitors, inductors, coil self-capacitances, op-amps with a bandwidth
    static constexpr int sources = 8;
    static constexpr int junctions = 16; ///< one for a diode, two for a transistor
    static constexpr int parts = 256;
    static constexpr int outputs = 4; ///< the output and nodes being looked at
};

} // namespace stopwright
