// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/RailStudy.h"

#include <complex>
#include <cstddef>
#include <optional>
#include <unordered_map>

namespace stopwright
{

/// A mixing bus as it stands around one of its stops, which is left out of it, at single frequencies. What a stop gives
/// is then arithmetic in that stop's and the left out stop's mixing resistors.
///
/// A stop of t volts behind Z and its mixing resistor R, with Y siemens of all else on the bus, is heard as
/// t drive / ((Z + R) (felt Y + amplifier) + felt): for a wire with a load `felt` is 1 and `amplifier` 0; an ideal
/// virtual earth feels nothing (0 and 1); one of finite bandwidth stands between.
/// Threading: [control], one thread at a time. `study` must outlive it.
class BusSurroundings
{
public:
    struct At
    {
        std::complex<double> drive;     ///< with the preamp behind the bus
        std::complex<double> amplifier; ///< siemens that the amplifier of a virtual earth adds
        double felt = 1.0;
        std::complex<double> siemens;     ///< load and stops as the state has them, the left out one not among them
        std::complex<double> leftOutOhms; ///< of the left out stop's own network, without its mixing resistor
    };

    BusSurroundings (const RailStudy& study, std::size_t bus, RailState state, std::optional<std::size_t> leftOut);

    std::size_t bus() const noexcept { return bus_; }

    std::optional<std::size_t> leftOut() const noexcept { return leftOut_; }

    /// The reference stays good as long as this does. Range: frequencyHz > 0.
    const At& at (double frequencyHz) const;

private:
    const RailStudy& study_;
    std::size_t bus_;
    RailState state_;
    std::optional<std::size_t> leftOut_;
    mutable std::unordered_map<double, At> kept_;
};

} // namespace stopwright
