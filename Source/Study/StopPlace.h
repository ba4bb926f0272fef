// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Instrument.h"
#include "Organ/InstrumentCards.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// How a stop stands among the others of its rail, as the rail stands: its level against one of them over the keys that
/// both have, and what each other stop on its bus feels of it when it is drawn.
struct StopPlace
{
    struct Effect
    {
        std::string stop;
        double compassDb = 0.0; ///< rms volts of all its keys, with the stop drawn against a rail without it
    };

    std::optional<double> rmsDb; ///< of the stop re the other, all keys alike; nothing without another, or a silent one
    std::optional<double> weightedDb; ///< the same A-weighted
    std::vector<Effect> effects;      ///< the largest first
    std::string refusal;              ///< why there are no numbers; empty when there are
};

/// Threading: [any], it touches nothing but its arguments. Never throws for a stop that cannot be studied: see refusal.
StopPlace stopPlaceOf (const Instrument& instrument,
                       const InstrumentCards& cards,
                       std::size_t stop,
                       std::optional<std::size_t> reference);

} // namespace stopwright
