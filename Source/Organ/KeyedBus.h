// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/WaveSource.h"
#include "Tone/KeyerSettings.h"
#include "Tone/Wave.h"
#include "Units/Footage.h"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// A keyed bus of the instrument as found: what a tap can be taken from.
///
/// voltsPeakToPeak is what one key alone gives. With collectorOhms, every key reaches the bus through a resistor of its
/// own and they share the bus's load, so that n keys give each (Rc + Rl) / (Rc + n Rl) of what one gives alone: the bus
/// sags. Without it keys add up undiminished, as on a bus with an amplifier for each key.
struct KeyedBus
{
    std::string name;
    Footage footage = Footage::parse ("8");
    Wave wave;
    double voltsPeakToPeak = 1.0;
    double sourceOhms = 0.0;
    std::optional<double> collectorOhms; ///< Rc, per key
    double loadOhms = 10000.0;           ///< Rl, of the bus; means something only beside collectorOhms
    std::optional<KeyerSettings> keyer;  ///< instead of the instrument's

    bool operator== (const KeyedBus&) const = default;
};

/// The keyed wave it carries. Threading: [control].
inline WaveSource waveSourceOf (const KeyedBus& bus)
{
    return { bus.wave, bus.footage, bus.voltsPeakToPeak, bus.sourceOhms };
}

/// Whether a bus carries a wave at a footage, so that a tap of them is taken from it; where several do, from the first.
/// Threading: [control].
inline bool carries (const KeyedBus& bus, const Wave& wave, const Footage& footage)
{
    return bus.wave == wave && bus.footage == footage;
}

/// The one of buses that a tap of a wave at a footage is taken from; nullptr when none carries it. Threading: [control].
inline const KeyedBus* findKeyedBus (const std::vector<KeyedBus>& buses, const Wave& wave, const Footage& footage)
{
    const auto found = std::ranges::find_if (buses, [&] (const KeyedBus& bus) { return carries (bus, wave, footage); });
    return found == buses.end() ? nullptr : &*found;
}

} // namespace stopwright
