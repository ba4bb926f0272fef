// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/Phrase.h"

namespace stopwright
{

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
