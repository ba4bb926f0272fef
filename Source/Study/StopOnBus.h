// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/BusSurroundings.h"
#include "Study/RailStudy.h"

#include <complex>
#include <cstddef>
#include <span>
#include <vector>

namespace stopwright
{

/// How the stop that BusSurroundings leave out stands, and with which mixing resistor.
struct LeftOutStand
{
    StopStand stand = StopStand::open;
    double mixingOhms = 0.0;
};

/// Mean squares of a tone, volts squared: plain and behind frequency weighting A.
struct TonePower
{
    double plain = 0.0;
    double aWeighted = 0.0;

    void add (const TonePower& more) noexcept
    {
        plain += more.plain;
        aWeighted += more.aWeighted;
    }
};

/// One stop, drawn, over some keys: how loud it is behind its bus and preamp for any mixing resistor of its own and of
/// the stop its surroundings leave out. The networks are solved once; each level after that is a sum over the partials.
/// Threading: [control] to make; const functions [any].
class StopOnBus
{
public:
    /// Partials to 20 kHz. `around` belongs to the stop's bus and `state`; null for a stop on no bus, whose level no
    /// mixing resistor changes.
    StopOnBus (const RailStudy& study,
               std::size_t stop,
               const RailState& state,
               const BusSurroundings* around,
               std::span<const int> keys);

    std::size_t keyCount() const noexcept { return starts_.size() - 1; }

    /// Range: keyIndex < keyCount(), mixingOhms >= 0 with the network's own impedance not adding up to nothing.
    TonePower power (std::size_t keyIndex, double mixingOhms, const LeftOutStand& leftOut = {}) const noexcept;

private:
    struct Partial
    {
        double squaredVolts = 0.0; ///< rms, of t drive
        double squaredWeight = 0.0;
        std::complex<double> ownOhms;
        std::complex<double> siemens; ///< of all else: felt Y + amplifier
        std::complex<double> leftOutOhms;
    };

    void addKey (const RailStudy& study, const RailState& state, const BusSurroundings* around, int key);

    std::size_t stop_;
    double felt_ = 1.0;
    std::vector<Partial> partials_;
    std::vector<std::size_t> starts_; ///< [key], and the end
};

} // namespace stopwright
