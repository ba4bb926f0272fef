// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/SweptResponse.h"
#include "Organ/Card.h"

#include <complex>
#include <functional>
#include <string>
#include <vector>

namespace stopwright
{

/// A node of a network as a probe sees it: volts for each volt of each tap, nothing connected, and the impedance behind
/// them (Thevenin's equivalent), polarities of taps not in it.
struct NodeEquivalent
{
    std::vector<std::complex<double>> tapGains;
    std::complex<double> ohms;
};

/// Any node of a card whose output is loaded as it is in an instrument.
/// Threading: [control], one thread at a time.
class LoadedNode
{
public:
    /// Siemens that hang on the card's output, at a frequency in hertz.
    using Admittance = std::function<std::complex<double> (double frequencyHz)>;

    /// An empty node is the output, an empty load nothing. Fails: Error when there is no such node (it names those there
    /// are), it is common, or the network is not sound.
    LoadedNode (const Card& card, std::string node, Admittance load = {});

    /// Range: frequencyHz > 0.
    NodeEquivalent at (double frequencyHz) const;

    const std::string& node() const noexcept { return node_; }

private:
    std::string node_;
    Admittance load_;
    SweptResponse toNode_, toOutput_; ///< sources: taps, one into the output, one into the node
};

} // namespace stopwright
