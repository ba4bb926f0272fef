// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/SupplyRails.h"

#include <optional>
#include <string>

namespace stopwright
{

enum class BusKind
{
    passive,     ///< a wire with a load: every stop loads every other
    virtualEarth ///< the inverting input of an op-amp: stops add without loading each other
};

/// Where stops meet through their mixing resistors. Units: ohms, farads, hertz, volts.
struct MixingBus
{
    std::string name;
    BusKind kind = BusKind::virtualEarth;
    double loadOhms = 100e3;               ///< passive: bus to common
    double loadFarads = 0.0;               ///< passive: bus to common, of the loom
    double feedbackOhms = 47e3;            ///< virtual earth
    std::optional<double> gainBandwidthHz; ///< virtual earth; ideal without
    std::optional<SupplyRails> rails;      ///< virtual earth; unlimited without

    bool operator== (const MixingBus&) const = default;
};

} // namespace stopwright
