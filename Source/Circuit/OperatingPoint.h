// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Junction.h"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace stopwright
{

/// Where a network rests: every tap at zero volts, all supplies on, nothing moving.
struct OperatingPoint
{
    enum class Region
    {
        supplying,  ///< supply
        blocking,   ///< diode
        conducting, ///< diode
        cutOff,     ///< transistor
        active,     ///< transistor: only its emitter junction conducts
        saturated,  ///< transistor: collector against emitter below 0.12 V (Vt ln 100)
        reversed    ///< transistor: only its collector junction conducts
    };

    struct Device
    {
        std::string part;
        Region region = Region::blocking;
        std::vector<double> leadAmps; ///< into each lead, in the order of Part::nodes
    };

    std::vector<std::pair<std::string, double>> nodeVolts; ///< every node of the netlist but common, by name
    std::vector<Device> devices;                           ///< diodes, transistors and supplies in the netlist's order
    std::vector<std::pair<std::string, double>> stores;    ///< volts or amps of "C1", "L1", "L1.self", "U1"
    std::vector<double> junctionVolts;                     ///< in the order of junctionsOf
    std::vector<double> junctionExcessAmps;                ///< beyond junctionSiemens v
    std::vector<JunctionSlope> slopes;                     ///< whole slopes, for NodalEquations

    /// Volts of a node against common; 0 for common and for a name that is not there.
    double voltsAt (std::string_view node) const noexcept;

    /// A store's volts or amps; 0 for a name that is not there.
    double storeAt (std::string_view name) const noexcept;
};

/// What became of the search: the point, or a sentence that names a part or node.
struct OperatingPointSearch
{
    std::optional<OperatingPoint> point;
    std::string subject;
    std::string sentence;
};

/// Solves the network at 0 Hz: Newton's method in the junctions' volts with their steps limited; where that does not
/// settle, with a conductance across every junction that is taken away in steps, and then with the supplies raised from
/// zero. A node that only capacitors reach has no resting voltage of its own: it is held at 0 V by leastSiemens.
/// A network without devices rests at zero and is not looked at.
/// Threading: [control]. Needs names, nodes and values in order. Fails: never throws.
/// Source: Nagel, "SPICE2: A computer program to simulate semiconductor circuits", 1975; from memory.
OperatingPointSearch searchOperatingPoint (const Netlist& netlist);

/// The same. Fails: Error with the sentence.
OperatingPoint findOperatingPoint (const Netlist& netlist);

/// "active", "cut off" ... Threading: [control].
std::string_view regionWords (OperatingPoint::Region region) noexcept;

} // namespace stopwright
