// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/RailStudy.h"

#include <complex>
#include <cstddef>
#include <optional>
#include <vector>

namespace stopwright
{

/// What the input of a card costs the keyed bus that one of its taps hangs on.
struct TapLoad
{
    struct AtKey
    {
        int key = 0;
        double frequencyHz = 0.0; ///< of the wave's fundamental
        std::complex<double> inputOhms;
        double changeDb = 0.0; ///< of the bus, against the bus without the tap
    };

    std::size_t tap = 0; ///< index among the card's taps
    std::optional<std::size_t>
        keyedBus;                     ///< that has its wave and footage and states what it is behind; else all is empty
    double busOhms = 0.0;             ///< what the bus is behind, one key held
    std::vector<AtKey> atKeys;        ///< lowest, middle and highest key that sound
    std::vector<std::size_t> sharers; ///< other stops of the division with a tap there: they change alike
    std::optional<double> tenKeysDb;  ///< collectors: what ten keys cost each of them, with the tap or without
};

/// For each tap of a stop, with the stop drawn and the rest of the rail as in `state`. Nothing else is taken to hang on
/// the keyed bus: what does makes it stiffer, so that this is the most the tap can cost. A bus behind resistors per key is
/// behind one of them beside the bus's load, unless it states sourceOhms. Linear networks exactly.
/// Threading: [control].
std::vector<TapLoad> tapLoads (const RailStudy& study, std::size_t stop, const RailState& state);

/// Collectors: what so many keys held leave of each, dB. Range: keys >= 1, collectorOhms stated. Threading: [any].
double collectorSagDb (const KeyedBus& bus, int keys) noexcept;

} // namespace stopwright
