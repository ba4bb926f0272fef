// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace stopwright
{

/// How a tablet stands on its bus.
enum class StopStand
{
    drawn,
    open,    ///< retired, its mixing resistor hanging free; also a stop that has not been built
    grounded ///< retired, its mixing resistor to common
};

/// How all of a stop rail stands: for each stop of the instrument, in its order.
struct RailState
{
    std::vector<StopStand> stands;
    std::vector<double> mixingOhms;

    bool operator== (const RailState&) const = default;
};

} // namespace stopwright
