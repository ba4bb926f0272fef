// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/BenchPoint.h"
#include "Study/ToneLevel.h"

#include <array>
#include <cstddef>
#include <functional>
#include <vector>

namespace stopwright
{

/// What one key of a compass comes to, with every partial up to 20 kHz counted.
struct CompassRow
{
    static constexpr std::size_t harmonicCount = 16;

    int key = 0;                ///< MIDI number
    double fundamentalHz = 0.0; ///< 8 ft pitch of the key
    ToneLevel level;
    std::array<double, harmonicCount> harmonicDb {}; ///< harmonics 1, 2 .. of the 8 ft pitch, dB re the strongest
                                                     ///< partial; -infinity for those that are absent
};

/// A card by itself, at its unloaded output, over the compass of its key source. A key without any generator is silent.
/// Threading: [control]. Fails: Error when the network is not sound.
std::vector<CompassRow> compassTable (const Card& card, const KeySource& keySource);

/// A place for a probe over the compass of its stop. `isUnwanted`, which may be empty, is asked before each key; once it
/// says so the rest is left out. Threading: [control].
std::vector<CompassRow> compassTable (const BenchPoint& point, const std::function<bool()>& isUnwanted);

/// Stops of one division of an instrument sounding together, at the outlets, with the rail standing as in `state`; the
/// stops given are taken to be drawn. Partials add as complex amplitudes.
/// Threading: [control]. Needs at least one stop.
std::vector<CompassRow>
    compassTable (const RailStudy& study, const std::vector<std::size_t>& stops, const RailState& state);

} // namespace stopwright
