// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Netlist.h"

#include <complex>
#include <memory>
#include <string_view>
#include <vector>

namespace stopwright
{

/// Small-signal analysis of a network on the analogue circuit itself, by complex modified nodal analysis at each
/// frequency. Diodes and transistors are what they are for signals too small to move them from their operating point
/// (conductances and transconductances there, see OperatingPoint); supplies are at zero volts.
/// It shares no arithmetic with the state-space route, so that each can check the other.
/// Threading: [control]. Source: Ho, Ruehli, Brennan, "The modified nodal approach to network analysis", 1975.
class SmallSignal
{
public:
    /// Fails: Error with a sentence when the netlist is not sound or has no operating point.
    explicit SmallSignal (const Netlist& netlist);
    ~SmallSignal();
    SmallSignal (const SmallSignal&) = delete;
    SmallSignal& operator= (const SmallSignal&) = delete;
    SmallSignal (SmallSignal&&) noexcept;
    SmallSignal& operator= (SmallSignal&&) noexcept;

    /// Complex ratio of the voltage at `node` to the source's open-circuit voltage. frequencyHz >= 0, finite.
    /// Fails: Error when the source or node does not exist.
    std::complex<double> response (std::string_view source, std::string_view node, double frequencyHz) const;

    /// Responses of `node` from every source, in the netlist's order of sources, with one factorisation.
    std::vector<std::complex<double>> responses (std::string_view node, double frequencyHz) const;

    /// Impedance in ohms seen between `node` and common, every source at zero volts.
    std::complex<double> impedance (std::string_view node, double frequencyHz) const;

    /// Natural frequencies of the network in rad/s (complex pairs adjacent), in ascending magnitude.
    std::vector<std::complex<double>> poles() const;

private:
    struct Implementation;
    std::unique_ptr<Implementation> implementation_;
};

} // namespace stopwright
