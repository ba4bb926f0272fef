// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/Phrase.h"

#include <algorithm>

namespace stopwright
{

Phrase inTimeOrder (Phrase phrase)
{
    const auto order = [] (auto& events)
    {
        for (auto& event : events)
            event.seconds = std::max (0.0, event.seconds);
        std::ranges::stable_sort (events, {}, [] (const auto& event) { return event.seconds; });
    };
    order (phrase.keys);
    order (phrase.swells);
    return phrase;
}

Phrase heldKeys (const std::vector<int>& keys, double seconds, int keyboard)
{
    Phrase phrase;
    phrase.seconds = seconds;
    for (const int key : keys)
        phrase.keys.push_back ({ 0.0, key, true, keyboard });
    for (const int key : keys)
        phrase.keys.push_back ({ seconds, key, false, keyboard });
    return phrase;
}

} // namespace stopwright
