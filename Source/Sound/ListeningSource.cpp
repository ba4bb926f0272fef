// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/ListeningSource.h"

namespace stopwright
{

void ListeningSource::process (std::span<const KeyEvent> events, std::span<float> out)
{
    float* const channels[] = { out.data() };
    engine_.process (events, channels, static_cast<int> (out.size()));
    clips_ |= engine_.telemetry().clips;
}

} // namespace stopwright
