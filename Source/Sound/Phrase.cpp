// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/Phrase.h"

namespace stopwright
{

Phrase heldKeys (const std::vector<int>& keys, double seconds)
{
    Phrase phrase;
    phrase.seconds = seconds;
    for (const int key : keys)
        phrase.keys.push_back ({ 0.0, key, true });
    for (const int key : keys)
        phrase.keys.push_back ({ seconds, key, false });
    return phrase;
}

} // namespace stopwright
