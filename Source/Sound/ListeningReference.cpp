// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/ListeningReference.h"

#include "Sound/InstrumentVoice.h"
#include "Study/HarmonicTable.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace stopwright
{

namespace
{

constexpr int middleC = 60;

int nearestToMiddleC (int lowestKey, int highestKey)
{
    return std::clamp (middleC, lowestKey, std::max (lowestKey, highestKey));
}

/// The instrument with one stop drawn and nothing else, and outlets that do not sway.
Instrument withOnly (Instrument instrument, const std::string& tablet)
{
    for (StopTablet& stop : instrument.stops)
        stop.drawn = stop.name == tablet;
    for (Coupler& coupler : instrument.couplers)
        coupler.drawn = false;
    for (Outlet& outlet : instrument.outlets)
        outlet.isOn = false;
    return instrument;
}

} // namespace

double referenceVolts (const Card& card, const KeySource& keySource)
{
    const int key = nearestToMiddleC (keySource.lowestKey, keySource.highestKey);
    return std::max (lowestReferenceVolts, rmsVolts (harmonicTable (card, keySource, key)));
}

double referenceVolts (const Instrument& instrument, const InstrumentCards& cards, const std::string& tablet)
{
    const auto stop = std::ranges::find (instrument.stops, tablet, &StopTablet::name);
    if (stop == instrument.stops.end())
        return lowestReferenceVolts;
    const auto division = std::ranges::find (instrument.divisions, stop->division, &Division::name);
    if (division == instrument.divisions.end())
        return lowestReferenceVolts;

    InstrumentVoice voice (withOnly (instrument, tablet), cards, StreamSpec {});
    voice.key (static_cast<int> (division - instrument.divisions.begin()),
               nearestToMiddleC (division->lowestKey, division->highestKey), true, 0);
    constexpr int pieces = 375; // half a second
    std::vector<double> piece (Voice::pieceFrames);
    double sum = 0.0;
    for (int index = 0; index < pieces; ++index)
    {
        voice.renderPiece (piece);
        for (const double volts : piece)
            sum += index >= pieces / 2 ? volts * volts : 0.0;
    }
    const double mean = sum / ((pieces - pieces / 2) * Voice::pieceFrames); // NOLINT(bugprone-integer-division): pieces
    return std::isfinite (mean) ? std::max (lowestReferenceVolts, std::sqrt (mean)) : lowestReferenceVolts;
}

} // namespace stopwright
