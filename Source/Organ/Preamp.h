// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/SupplyRails.h"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// A coupling capacitor into the input resistance of a stage: a high-pass at 1 / (2 pi R C).
struct Coupling
{
    double farads = 1e-6;
    double inputOhms = 47e3;

    bool operator== (const Coupling&) const = default;
};

enum class StageKind
{
    amplifier, ///< a gain, with a bandwidth and rails where it has them
    follower,  ///< an emitter follower into a load, which cannot sink more than its standing current
    circuit    ///< a network of its own: a card with exactly one tap, whose wave is not used
};

/// One stage of a preamp. Units: volts, amps, ohms, hertz. What does not belong to the kind is not used.
struct PreampStage
{
    std::string name;
    StageKind kind = StageKind::amplifier;
    std::optional<Coupling> coupling;
    double gain = 1.0; ///< amplifier; negative inverts
    std::optional<double>
        gainBandwidthHz;              ///< amplifier: bandwidth = gainBandwidthHz / noiseGainOf (stage); ideal without
    std::optional<SupplyRails> rails; ///< amplifier and follower; unlimited without
    double emitterAmps = 0.7e-3;      ///< follower: standing current
    double emitterOhms = 10e3;        ///< follower
    double loadOhms = 47e3;           ///< follower: what it drives, coupled by a capacitor
    std::string cardFile;             ///< circuit: relative to the instrument's document

    bool operator== (const PreampStage&) const = default;
};

/// The gain that an amplifier's own bandwidth is divided by: 1 + |gain| of one that inverts, as its feedback divides, and
/// the gain itself, at least 1, of one that does not. Threading: [any].
/// Source: Franco, "Design with Operational Amplifiers and Analog Integrated Circuits", 6.1, noise gain; from memory.
inline double noiseGainOf (const PreampStage& stage) noexcept
{
    return stage.gain < 0.0 ? 1.0 - stage.gain : std::max (1.0, stage.gain);
}

/// From a mixing bus through stages, in this order, to an outlet.
struct Preamp
{
    std::string name;
    std::string bus;
    std::string outlet;
    std::vector<PreampStage> stages;

    bool operator== (const Preamp&) const = default;
};

} // namespace stopwright
