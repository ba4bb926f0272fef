// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Part.h"

namespace stopwright
{

/// How the currents of one diode or transistor follow the volts across its junctions, at 300 K.
///
/// Diode: i = Is (e^(v / (n Vt)) - 1). Transistor, transport form of the Ebers-Moll equations, volts positive in the
/// conducting direction for either polarity:
///   transport  iT = Is (e^(vbe / Vt) - e^(vbc / Vt)), with an Early voltage VA times 1 - vbc / VA while the collector
///              junction blocks (and divided by 1 + vbc / VA while it conducts, which continues it smoothly)
///   be branch  iT + Is / bF (e^(vbe / Vt) - 1)
///   bc branch -iT + Is / bR (e^(vbc / Vt) - 1) + leak,  leak = I_CBO (e^(vbc / Vt) - 1) while it blocks, straight on
///              with the same slope while it conducts
/// Every junction has leastSiemens in parallel, so that a blocked one still decides a resting voltage. Junction charge
/// is not modelled: put capacitors where it matters. Beyond largestAmps an exponential runs straight on.
/// Threading: [any]; evaluate and limited are [audio].
/// Source: Ebers, Moll, "Large-signal behavior of junction transistors", Proc. IRE 42, 1954; transport form: Getreu,
/// "Modeling the bipolar transistor", 1976; from memory.
class JunctionLaw
{
public:
    /// k T / q at 300 K (SI 2019 values of k and q).
    static constexpr double thermalVolts = 0.025852;

    static constexpr double leastSiemens = 1e-12;
    static constexpr double largestAmps = 1e3;

    explicit JunctionLaw (const Diode& diode) noexcept;
    explicit JunctionLaw (const Transistor& transistor) noexcept;

    int junctionCount() const noexcept { return isTransistor_ ? 2 : 1; }

    /// Amps of each junction's branch; slopes[0] and [1] are the own slopes of be and bc, cross[k] the slope of branch k
    /// along the other junction's volts. One entry each for a diode.
    void evaluate (const double* volts, double* amps, double* slopes, double* cross) const noexcept;

    /// Volts at which the junction conducts as much as `ohms` do: below this knee the rest of the network decides the
    /// volts, above it the current. Infinite for 0 ohms.
    double kneeVolts (double ohms) const noexcept;

    /// Where a Newton step from `last` to `next` should end: above the knee it is taken in the current, whose logarithm
    /// the volts are, and a step across the knee goes on from there in the same way.
    /// Source: Nagel, "SPICE2: A computer program to simulate semiconductor circuits", 1975 (iteration on current above
    /// a critical voltage); from memory. The knee that depends on the network: own choice, no source.
    double limited (double next, double last, double kneeVolts) const noexcept;

private:
    bool isTransistor_;
    double saturationAmps_;
    double exponentVolts_; ///< n Vt
    double largestExponent_;
    double inverseForward_ = 0.0; ///< 1 / bF
    double inverseReverse_ = 0.0; ///< 1 / bR
    double leakageAmps_ = 0.0;
    double inverseEarly_ = 0.0;
};

} // namespace stopwright
