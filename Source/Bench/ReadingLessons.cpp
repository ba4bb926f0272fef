// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ReadingLessons.h"

namespace stopwright
{

const char* readingLesson (ReadingKind kind) noexcept
{
    switch (kind)
    {
        case ReadingKind::harmonics:
            return "Partial: one of the simple tones a sound is made of, numbered from the fundamental (1) of the key's "
                   "8 ft pitch. Behind: what the tapped waves hold. In front: what the card lets through to the place "
                   "looked at. An open circle marks a partial that the waves do not hold at all: no network can bring "
                   "it out. Target: the levels that a chosen mask wants, a window for each, after the best gain for "
                   "all; a heavy line where the result is outside.";
        case ReadingKind::response:
            return "Response: how much of each frequency at a tap's open wire comes out at the place looked at. Dots are "
                   "the partials of the key in hand; an open circle stands where the tap's wave has none. Phase: how "
                   "far the output is ahead of the tap (+) or behind it (-), in degrees of one turn.";
        case ReadingKind::wave:
            return "Wave: what a scope would show of the key at the place looked at, from the rising edge of the "
                   "generators on, with nothing connected that loads it. Averaging meter: one that averages and is "
                   "marked in rms for sines, as most that are not called true rms; it reads other waves wrongly.";
        case ReadingKind::compass:
            return "Compass: all keys of the stop's keyboard, from left to right. The line is the level of each key; the "
                   "shades below are its partials from 1 at the bottom to 16 at the top, re the strongest of the key. "
                   "A-weighted: counted as the ear does at low level (IEC 61672-1).";
        case ReadingKind::stages:
            break;
    }
    return "Headroom: how far the peaks of a bus or preamp stage stay below its limits, which are its supply rails or what "
           "its standing current allows. Peak bound: all pitch classes at their highest at once, which hardly ever "
           "happens. Rms: what a meter would show. The drawn stops count, with the keys that are chosen.";
}

} // namespace stopwright
