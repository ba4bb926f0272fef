// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/HarmonicTable.h"

#include "Circuit/SmallSignal.h"
#include "Study/TapPartials.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <span>

namespace stopwright
{

namespace
{

/// A sum of complex amplitudes that knows when what is left of it is only rounding.
class AmplitudeSum
{
public:
    void add (std::complex<double> amplitude)
    {
        sum_ += amplitude;
        size_ += std::abs (amplitude);
    }

    double peak() const
    {
        constexpr double rounding = 1e-13;
        const double magnitude = std::abs (sum_);
        return magnitude <= rounding * size_ ? 0.0 : magnitude;
    }

private:
    std::complex<double> sum_;
    double size_ = 0.0;
};

/// One row for partials of the same pitch.
HarmonicRow rowOf (std::span<const TapPartial> partials, const SmallSignal& network, const std::string& output)
{
    const auto& first = partials.front();
    const auto responses = network.responses (output, first.frequencyHz);
    AmplitudeSum source;
    AmplitudeSum heard;
    for (const auto& partial : partials)
    {
        source.add (partial.volts);
        heard.add (partial.volts * responses[partial.tap]);
    }
    return { first.harmonic, first.frequencyHz, source.peak(), heard.peak(), 0.0 };
}

void relateToStrongest (std::vector<HarmonicRow>& rows)
{
    double strongest = 0.0;
    for (const auto& row : rows)
        strongest = std::max (strongest, row.outputPeakVolts);
    for (auto& row : rows)
        row.outputDb = toDecibels (strongest > 0.0 ? row.outputPeakVolts / strongest : 0.0);
}

} // namespace

std::vector<HarmonicRow> harmonicTable (const Card& card, const KeySource& keySource, int key, double highestHz)
{
    const auto partials = tapPartials (card, keySource, key, highestHz);
    const SmallSignal network (netlistOf (card));
    std::vector<HarmonicRow> rows;
    for (std::span<const TapPartial> left (partials); ! left.empty();)
    {
        const auto count = samePitchCount (left);
        rows.push_back (rowOf (left.first (count), network, card.output));
        left = left.subspan (count);
    }
    relateToStrongest (rows);
    return rows;
}

double rmsVolts (std::span<const HarmonicRow> rows) noexcept
{
    double meanSquare = 0.0;
    for (const auto& row : rows)
        meanSquare += 0.5 * row.outputPeakVolts * row.outputPeakVolts;
    return std::sqrt (meanSquare);
}

} // namespace stopwright
