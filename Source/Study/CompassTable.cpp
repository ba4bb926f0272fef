// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/CompassTable.h"

#include "Circuit/SweptResponse.h"
#include "Study/RailPartial.h"
#include "Units/Decibels.h"

#include <cmath>
#include <complex>
#include <limits>
#include <span>
#include <unordered_map>

namespace stopwright
{

namespace
{

/// The output of a card for one key after the other; keys an octave apart share frequencies.
class CardOutput
{
public:
    explicit CardOutput (const Card& card) : card_ (card), response_ (netlistOf (card), card.output) {}

    std::vector<RailPartial> partials (const KeySource& keySource, int key)
    {
        return throughGains (
            tapPartials (card_, keySource, key),
            1.0, [this](double frequencyHz) -> const auto& { return gainsAt (frequencyHz); });
    }

private:
    const std::vector<std::complex<double>>& gainsAt (double frequencyHz)
    {
        const auto known = kept_.find (frequencyHz);
        return known != kept_.end() ? known->second
                                    : kept_.emplace (frequencyHz, response_.at (frequencyHz)).first->second;
    }

    const Card& card_;
    SweptResponse response_;
    std::unordered_map<double, std::vector<std::complex<double>>> kept_;
};

CompassRow rowOf (int key, double fundamentalHz, std::span<const RailPartial> partials)
{
    CompassRow row { key, fundamentalHz, toneLevelOf (partials), {} };
    row.harmonicDb.fill (-std::numeric_limits<double>::infinity());
    for (const RailPartial& partial : partials)
    {
        const double harmonic = std::round (partial.harmonic);
        const bool isListed = harmonic == partial.harmonic && harmonic >= 1.0 && harmonic <= CompassRow::harmonicCount;
        if (isListed && row.level.strongestPeakVolts > 0.0)
            row.harmonicDb[static_cast<std::size_t> (harmonic) - 1] =
                toDecibels (std::abs (partial.volts) / row.level.strongestPeakVolts);
    }
    return row;
}

} // namespace

std::vector<CompassRow> compassTable (const Card& card, const KeySource& keySource)
{
    CardOutput output (card);
    std::vector<CompassRow> rows;
    for (int key = keySource.lowestKey; key <= keySource.highestKey; ++key)
        rows.push_back (rowOf (key, keySource.tuning.keyHz (key), output.partials (keySource, key)));
    return rows;
}

std::vector<CompassRow> compassTable (const BenchPoint& point, const std::function<bool()>& isUnwanted)
{
    const KeySource& compass = point.keySource();
    std::vector<CompassRow> rows;
    for (int key = compass.lowestKey; key <= compass.highestKey; ++key)
    {
        if (isUnwanted && isUnwanted())
            break;
        const auto partials = throughGains (
            tapPartials (point.card(), compass, key),
            point.polarity(), [&](double frequencyHz) -> const auto& { return point.at (frequencyHz).tapGains; });
        rows.push_back (rowOf (key, compass.tuning.keyHz (key), partials));
    }
    return rows;
}

std::vector<CompassRow>
    compassTable (const RailStudy& study, const std::vector<std::size_t>& stops, const RailState& state)
{
    RailState standing = state;
    for (const std::size_t stop : stops)
        standing.stands[stop] = StopStand::drawn;

    const KeySource& compass = study.keySource (stops.front());
    std::vector<CompassRow> rows;
    for (int key = compass.lowestKey; key <= compass.highestKey; ++key)
    {
        std::vector<std::vector<RailPartial>> tones;
        tones.reserve (stops.size());
        for (const std::size_t stop : stops)
            tones.push_back (study.partials (stop, key, standing));
        rows.push_back (rowOf (key, compass.tuning.keyHz (key), addTones (tones)));
    }
    return rows;
}

} // namespace stopwright
