// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/WaveCorners.h"

#include <algorithm>

namespace stopwright
{

WaveCorners WaveCorners::of (const Wave& wave) noexcept
{
    switch (wave.kind)
    {
        case WaveKind::square:
        case WaveKind::pulse:
        {
            const double d = wave.duty;
            return { { Corner { 0.0, 1.0, 0.0, 1.0 - d, 0.0 }, Corner { d, -1.0, 0.0, -d, 0.0 } }, 2 };
        }
        case WaveKind::triangle:
            return { { Corner { 0.0, 0.0, 4.0, -0.5, 2.0 }, Corner { 0.5, 0.0, -4.0, 0.5, -2.0 } }, 2 };
        case WaveKind::sawtooth:
            return { { Corner { 0.0, 1.0, 0.0, 0.5, -1.0 }, Corner {} }, 1 };
        case WaveKind::outphased:
        {
            // (1/2 - t) - w (1/2 - 2 t) in the first half period, w (1/2 - 2 t) one jump of -w later in the second.
            const double w = wave.outphaseWeight;
            const double scale = 1.0 / std::max (w, 1.0 - w);
            const double slope = scale * (2.0 * w - 1.0);
            return { { Corner { 0.0, scale * (1.0 - w), 0.0, scale * 0.5 * (1.0 - w), slope },
                       Corner { 0.5, -scale * w, 0.0, -scale * 0.5 * w, slope } },
                     2 };
        }
        case WaveKind::staircase:
        case WaveKind::rounded:
            break;
    }

    return {};
}

} // namespace stopwright
