// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/PortBlock.h"
#include "Organ/MixingBus.h"

namespace stopwright
{

/// The node where stops meet, solved exactly eight samples at a time.
///
/// Everything on the bus together is a current into zero volts, a conductance, and how past volts of the block come back
/// as current: one scalar equation a sample, whatever the number of stops.
///   passive:        I + k * p - G p = p / R + C dp/dt                      (out = p)
///   virtual earth:  I + k * p - G p = (p - out) / Rf,  d out/dt = -2 pi GBW p, or p = 0 with an ideal amplifier
/// Derivatives by the trapezoidal rule like everything else. Rails are not here: what follows the bus clips.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class BusNode
{
public:
    static constexpr int length = PortBlock::length;
    using Samples = PortBlock::Samples;

    /// What the stops on the bus come to.
    struct Stops
    {
        Samples amps {};      ///< I, into the bus at zero volts
        Samples kernel {};    ///< k, siemens
        double siemens = 0.0; ///< G, mixing resistors to stops and to common
    };

    /// The same for the present moment alone.
    struct Instant
    {
        double amps = 0.0;
        double kernel = 0.0;
        double siemens = 0.0;
    };

    BusNode (const MixingBus& bus, double sampleRateHz);

    /// Solves a block: p into busVolts, what is heard of the bus into out.
    void solve (const Stops& stops, Samples& busVolts, Samples& out) noexcept;

    /// Where the bus stands for the charges there are, after something on it has changed. Before the next solve.
    double settle (const Instant& instant) noexcept;

    /// The bus stands at common whatever the stops do, so nothing comes back to them.
    bool isIdealEarth() const noexcept { return isIdealEarth_; }

    /// Goes on with the volts and charges of another bus.
    void adopt (const BusNode& other) noexcept;

    void reset() noexcept;

private:
    void solveBehind (const Stops& stops, Samples& busVolts, Samples& out) noexcept;

    bool isVirtualEarth_;
    bool isIdealEarth_;
    double siemens_;          ///< to common, or through Rf
    double capacitorSiemens_; ///< 2 C / h
    double drop_ = 0.0;       ///< pi GBW h: how far the output falls for a volt at the input before and after
    double volts_ = 0.0;      ///< p of the last sample
    double capacitorAmps_ = 0.0;
    double out_ = 0.0;
};

} // namespace stopwright
