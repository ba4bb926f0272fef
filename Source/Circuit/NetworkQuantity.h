// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/StateSpaceBuilder.h"

#include <span>

namespace stopwright
{

/// Volts or amps of a capacitor, coil or op-amp output, from the states and the sources' volts.
/// Threading: [audio] no allocation, no lock.
double valueOf (const StateSpaceBuilder::Quantity& quantity,
                const StateSpace& network,
                std::span<const double> states,
                std::span<const double> sources) noexcept;

} // namespace stopwright
