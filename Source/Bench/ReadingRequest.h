// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/ReadingChoices.h"
#include "Bench/ReadingResult.h"
#include "Organ/InstrumentCards.h"

#include <functional>
#include <optional>

namespace stopwright
{

/// All that a reading is computed from, held by value so that another thread can do it.
struct ReadingRequest
{
    ReadingChoices choices;
    int key = 60;
    Card card;
    KeySource keySource;
    std::optional<Instrument> instrument {}; ///< without one, the card is by itself
    InstrumentCards cards {};                ///< of the instrument, the card in hand among them
    std::string stop {};                     ///< the stop in hand
    std::string division {};                 ///< its keyboard

    /// A card or instrument that cannot be computed gives a refusal. Once `isUnwanted` says so a long computation stops
    /// and nothing is returned. Threading: [any], it touches nothing but itself.
    std::optional<ReadingResult> compute (const std::function<bool()>& isUnwanted) const;

private:
    BenchPoint point() const;
    std::optional<ReadingResult> read (ReadingResult result, const std::function<bool()>& isUnwanted) const;
};

} // namespace stopwright
