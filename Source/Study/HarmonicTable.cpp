// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/HarmonicTable.h"

#include "Circuit/SmallSignal.h"
#include "Tone/FourierSeries.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <span>

namespace stopwright
{

namespace
{

/// Two partials nearer than this, relative, are one: generators are rounded within 1e-12, and tempered ones that miss
/// each other do so by far more.
constexpr double samePitch = 1e-9;

/// One partial of one tap, in volts.
struct TapPartial
{
    double harmonic = 0.0;
    double frequencyHz = 0.0;
    std::size_t tap = 0;
    std::complex<double> volts;
};

/// The generator's pitch re the key's 8 ft pitch. It is the footage's exact fraction, perhaps octaves lower where it
/// breaks back, when the generator is tuned to that; a borrowed mutation has only the measured ratio.
double pitchRatio (double generatorHz, double keyHz, const Footage& footage)
{
    const double measured = generatorHz / keyHz;
    const double octaves = std::round (std::log2 (measured / footage.harmonicOfEightFoot()));
    const double exact = std::ldexp (footage.harmonicOfEightFoot(), static_cast<int> (octaves));
    return std::abs (measured - exact) <= samePitch * exact ? exact : measured;
}

/// How many partials lie at or below highestHz, one that falls on it included.
int partialCount (double fundamentalHz, double highestHz)
{
    return static_cast<int> (std::floor (highestHz / fundamentalHz * (1.0 + samePitch)));
}

void addPartials (const Tap& tap,
                  std::size_t tapIndex,
                  const Tuning& tuning,
                  int key,
                  double highestHz,
                  std::vector<TapPartial>& partials)
{
    const auto generator = tuning.generatorFor (key, tap.footage);
    if (! generator)
        return;

    const double fundamentalHz = tuning.frequencyHz (*generator);
    const double ratio = pitchRatio (fundamentalHz, tuning.keyHz (key), tap.footage);
    const double volts = tap.polarity * tap.voltsPeakToPeak;
    const int count = partialCount (fundamentalHz, highestHz);
    for (int n = 1; n <= count; ++n)
        partials.push_back (
            { n * ratio, n * fundamentalHz, tapIndex, volts * fourierCoefficient (tap.wave, n, *generator, tuning) });
}

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

void requireRange (int key, double highestHz)
{
    constexpr int highestKey = 127;
    constexpr double mostHz = 1e6;
    if (key < 0 || key > highestKey)
        throw Error ("There is no key number " + std::to_string (key) + ": keys are counted from 0 (C-1) to 127 (G9).");
    if (! (highestHz > 0.0 && highestHz <= mostHz))
        throw Error ("Partials can be listed up to a frequency above 0 and at most 1 MHz.");
}

} // namespace

std::vector<HarmonicRow> harmonicTable (const Card& card, const KeySource& keySource, int key, double highestHz)
{
    requireRange (key, highestHz);
    const SmallSignal network (netlistOf (card));

    std::vector<TapPartial> partials;
    for (std::size_t i = 0; i < card.taps.size(); ++i)
        addPartials (card.taps[i], i, keySource.tuning, key, highestHz, partials);
    const auto isLower = [] (const TapPartial& a, const TapPartial& b) { return a.frequencyHz < b.frequencyHz; };
    std::stable_sort (partials.begin(), partials.end(), isLower);

    std::vector<HarmonicRow> rows;
    for (auto first = partials.begin(); first != partials.end();)
    {
        const double limitHz = first->frequencyHz * (1.0 + samePitch);
        const auto last =
            std::find_if (first, partials.end(), [limitHz] (const TapPartial& p) { return p.frequencyHz > limitHz; });
        rows.push_back (rowOf ({ first, last }, network, card.output));
        first = last;
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
