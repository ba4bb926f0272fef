// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/SweptResponse.h"
#include "Organ/Card.h"

#include <complex>
#include <unordered_map>
#include <vector>

namespace stopwright
{

/// A stop's network as what stands behind its output sees it: a voltage for each volt of each tap, and an impedance
/// (Thevenin's equivalent). Whatever mixing resistor and bus follow is then arithmetic.
///
/// Answers are kept: keys an octave apart ask for the same frequencies.
/// Threading: [control], one thread at a time.
class StopPort
{
public:
    struct Equivalent
    {
        std::vector<std::complex<double>>
            tapGains; ///< output volts, unloaded, per volt of each tap, polarity not in it
        std::complex<double> ohms;
    };

    /// `expectedOhms` is about what the output will be loaded with. Fails: Error when the network is not sound.
    StopPort (const Card& card, double expectedOhms);

    /// The reference stays good as long as the port does. Range: frequencyHz > 0.
    const Equivalent& at (double frequencyHz) const;

private:
    double probeOhms_;
    SweptResponse response_; ///< of the output node, its last source a probe behind probeOhms_
    mutable std::unordered_map<double, Equivalent> kept_;
};

} // namespace stopwright
