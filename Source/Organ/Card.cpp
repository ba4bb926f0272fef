// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/Card.h"

#include <algorithm>

namespace stopwright
{

WaveSource waveSourceOf (const Tap& tap)
{
    return { tap.wave, tap.footage, tap.voltsPeakToPeak, tap.sourceOhms };
}

void takeWaveSource (Tap& tap, const WaveSource& source)
{
    tap.wave = source.wave;
    tap.footage = source.footage;
    tap.voltsPeakToPeak = source.voltsPeakToPeak;
    tap.sourceOhms = source.sourceOhms;
}

Netlist netlistOf (const Card& card)
{
    Netlist netlist;
    for (const auto& tap : card.taps)
        netlist.sources.push_back ({ tap.name, tap.node, tap.sourceOhms });
    netlist.parts = card.parts;
    netlist.output = card.output;
    return netlist;
}

TapWaves tapWavesOf (const Card& card)
{
    TapWaves result;
    for (const auto& tap : card.taps)
    {
        const auto found = std::find (result.waves.begin(), result.waves.end(), tap.wave);
        result.waveOfTap.push_back (static_cast<int> (found - result.waves.begin()));
        if (found == result.waves.end())
            result.waves.push_back (tap.wave);
    }
    return result;
}

std::vector<Footage> mutationsOf (const Card& card)
{
    std::vector<Footage> mutations;
    for (const auto& tap : card.taps)
        if (! tap.footage.isOctave() && std::find (mutations.begin(), mutations.end(), tap.footage) == mutations.end())
            mutations.push_back (tap.footage);
    return mutations;
}

} // namespace stopwright
