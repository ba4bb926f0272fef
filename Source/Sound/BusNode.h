// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/PackedProduct.h"
#include "Circuit/PortBlock.h"
#include "Organ/MixingBus.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <tuple>

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

    static constexpr std::size_t twoBlocks = 2 * std::tuple_size_v<Samples>;

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

    /// What the stops are to the bus, but for their amps, from the next block on.
    void stand (const Stops& stops) noexcept;

    /// Solves a block: p into busVolts, what is heard of the bus into out.
    void solve (const Samples& amps, Samples& busVolts, Samples& out) noexcept;

    /// The same beside stops whose current is a curve of the bus's volts, one sample after the other. Curves has
    ///   open (sample), DeviceBranch::Reading at (volts) and close (volts),
    /// and is asked at most mostSteps times a sample before it is closed.
    template <typename Curves>
    void solveBeside (Curves& curves, const Stops& stops, Samples& busVolts, Samples& out) noexcept
    {
        std::array<double, twoBlocks> amps {};
        std::copy (stops.amps.begin(), stops.amps.end(), amps.begin());
        for (std::size_t sample = 0; sample < busVolts.size(); ++sample)
        {
            curves.open (sample);
            const double volts = isIdealEarth_ ? 0.0 : agree (curves, amps[sample] + rememberedAmps(), stops);
            const double fromCurves = curves.at (volts).amps;
            curves.close (volts);
            for (std::size_t later = 0; later < busVolts.size(); ++later)
                amps[sample + later] += stops.kernel[later] * volts;
            out[sample] = isIdealEarth_ ? -(amps[sample] + fromCurves) / siemens_ : moveOn (volts);
            busVolts[sample] = volts;
        }
    }

    /// Where the bus stands for the charges there are, after something on it has changed. Before the next solve.
    double settle (const Instant& instant) noexcept;

    /// The bus stands at common whatever the stops do, so nothing comes back to them.
    bool isIdealEarth() const noexcept { return isIdealEarth_; }

    /// Goes on with the volts and charges of another bus.
    void adopt (const BusNode& other) noexcept;

private:
    /// Siemens of everything straight on the bus.
    double wholeSiemens (const Stops& stops) const noexcept
    {
        return stops.siemens - stops.kernel[0] + siemens_ * (1.0 + drop_) + capacitorSiemens_;
    }

    /// What capacitor and amplifier add from the sample before.
    double rememberedAmps() const noexcept
    {
        return siemens_ * (out_ - drop_ * volts_) + capacitorSiemens_ * volts_ + capacitorAmps_;
    }

    /// Takes the bus to this sample's volts; returns what is heard of it.
    double moveOn (double volts) noexcept
    {
        capacitorAmps_ = capacitorSiemens_ * (volts - volts_) - capacitorAmps_;
        if (isVirtualEarth_)
            out_ -= drop_ * (volts + volts_);
        volts_ = volts;
        return isVirtualEarth_ ? out_ : volts;
    }

    /// The volts at which straight parts and curves agree, by Newton's method from the sample before.
    template <typename Curves>
    double agree (Curves& curves, double amps, const Stops& stops) const noexcept
    {
        constexpr double closeEnoughVolts = 1e-9;
        double volts = volts_;
        for (int step = 0; step < mostSteps; ++step)
        {
            const auto reading = curves.at (volts);
            const double change =
                (amps + reading.amps - wholeSiemens (stops) * volts) / (wholeSiemens (stops) - reading.slope);
            volts += change;
            if (std::abs (change) < closeEnoughVolts)
                break;
        }
        return volts;
    }

    static constexpr int mostSteps = 6;

    Samples answer (const Stops& stops, double amps, double remembered) const noexcept;

    bool isVirtualEarth_;
    bool isIdealEarth_;
    double siemens_;          ///< to common, or through Rf
    double capacitorSiemens_; ///< 2 C / h
    double drop_ = 0.0;       ///< pi GBW h: how far the output falls for a volt at the input before and after
    PackedProduct answers_;   ///< p from the block's amps and those remembered at its start
    double volts_ = 0.0;      ///< p of the last sample
    double capacitorAmps_ = 0.0;
    double out_ = 0.0;
};

} // namespace stopwright
