// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/StopOnBus.h"

#include <optional>
#include <span>

namespace stopwright
{

/// What a change on its bus does to a stop. dB; zero and no key for a stop that is silent all over.
struct LevelChange
{
    double compassDb = 0.0; ///< of the rms volts of all its keys together
    double largestDb = 0.0; ///< of the key that is changed most, with its sign
    std::optional<int> largestKey;
};

/// What a stop feels when the stop its surroundings leave out goes from one stand to another. `keys` as it was made with.
/// Threading: [control].
LevelChange levelChange (const StopOnBus& stop,
                         std::span<const int> keys,
                         double mixingOhms,
                         const LeftOutStand& from,
                         const LeftOutStand& to);

} // namespace stopwright
