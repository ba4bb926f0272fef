// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Netlist.h"

#include <span>

namespace stopwright
{

/// One pn junction of a part as a branch of the network: which of the part's leads are its two ends, in the direction
/// in which it conducts.
struct Junction
{
    std::size_t from = 0;
    std::size_t to = 0;
    std::string_view suffix; ///< what its name adds to the part's: "" for a diode, ".be" and ".bc" for a transistor
};

/// The junctions of a part: one for a diode, base-emitter and base-collector in this order for a transistor, none for
/// anything else. All tables of junctions follow the netlist's order of parts and this order within a part.
/// Threading: [control].
std::span<const Junction> junctionsOf (const PartValue& value) noexcept;

/// Whether a network has diodes, transistors or supplies, and so needs NonlinearCircuit to run in time.
/// Threading: [control].
bool hasDevices (const Netlist& netlist) noexcept;

/// Conductance that stands in for every junction in the linear rest of a network; what a junction carries beyond it is
/// fed in as a current, so its size changes no result, only the digits: with it no node between junctions floats.
inline constexpr double junctionSiemens = 1e-6;

/// How the currents of a junction follow its volts, and those of the other junction of the same transistor.
struct JunctionSlope
{
    double own = junctionSiemens; ///< siemens
    double cross = 0.0;           ///< d amps / d volts of the other junction
};

} // namespace stopwright
