// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Part.h"
#include "Circuit/PartKnob.h"
#include "Units/Engineering.h"

#include <string_view>

namespace stopwright
{

/// Which numbers of one kind are legal: lowest..highest, and perhaps zero or infinity meaning "not there".
struct ValueRange
{
    std::string_view what; ///< for sentences: "resistance", "leak" ...
    Quantity quantity = Quantity::number;
    double lowest = 0.0;
    double highest = 0.0;
    bool zeroMeansNone = false;
    bool infinityMeansNone = false;

    /// Whether `value` is legal. NaN never is. Threading: [any].
    bool contains (double value) const noexcept;

    /// `value` brought into lowest..highest, with zero and infinity kept where they are legal; NaN becomes lowest.
    /// Threading: [audio].
    double clamp (double value) const noexcept;
};

/// The range of every number in a netlist, in SI units: wide enough for anything that can be bought or wound, narrow
/// enough for the solvers to keep their accuracy. Own choice, no source.
struct ValueLimits
{
    static constexpr ValueRange resistance { "resistance", Quantity::resistance, 1e-3, 1e12 };
    static constexpr ValueRange capacitance { "capacitance", Quantity::capacitance, 1e-15, 1.0 };
    static constexpr ValueRange leak { "leak resistance", Quantity::resistance, 1.0, 1e15, false, true };
    static constexpr ValueRange inductance { "inductance", Quantity::inductance, 1e-9, 1e5 };
    static constexpr ValueRange winding { "winding resistance", Quantity::resistance, 0.0, 1e9 };
    static constexpr ValueRange selfCapacitance { "self-capacitance", Quantity::capacitance, 1e-15, 1e-3, true };
    static constexpr ValueRange track { "track resistance", Quantity::resistance, 1e-3, 1e12 };
    static constexpr ValueRange position { "position", Quantity::number, 0.0, 1.0 };
    static constexpr ValueRange gainBandwidth { "gain-bandwidth product", Quantity::frequency, 1.0, 1e12 };
    static constexpr ValueRange openLoopDb { "open-loop gain in dB", Quantity::number, 0.0, 200.0 };
    static constexpr ValueRange rail { "rail", Quantity::voltage, -1e4, 1e4 };
    static constexpr ValueRange saturation { "saturation current", Quantity::current, 1e-20, 1e-2 };
    static constexpr ValueRange emission { "emission coefficient", Quantity::number, 0.5, 10.0 };
    static constexpr ValueRange forwardBeta { "forward current gain", Quantity::number, 1.0, 1e5 };
    static constexpr ValueRange reverseBeta { "reverse current gain", Quantity::number, 1e-3, 1e5 };
    static constexpr ValueRange leakage { "leakage current", Quantity::current, 1e-15, 1e-1, true };
    static constexpr ValueRange early { "Early voltage", Quantity::voltage, 1.0, 1e6 };
    static constexpr ValueRange supplyVolts { "voltage", Quantity::voltage, -1e4, 1e4 };
    static constexpr ValueRange seriesResistance { "series resistance", Quantity::resistance, 1e-3, 1e9, true };
    static constexpr ValueRange sourceResistance { "source resistance", Quantity::resistance, 1e-3, 1e12, true };
    static constexpr ValueRange tolerance { "tolerance", Quantity::number, 0.0, 0.99 };
};

/// Range of the number that a knob of this kind turns on a part of this kind (`part` is not looked at for sourceOhms).
/// Fails: Error when a part of this kind has no such number. Threading: [control].
const ValueRange& rangeOf (KnobKind kind, const PartValue& part);

} // namespace stopwright
