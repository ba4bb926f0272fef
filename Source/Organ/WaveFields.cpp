// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/DocumentFields.h"
#include "Units/Error.h"

#include <array>
#include <cstddef>

namespace stopwright
{

namespace
{

/// In the order of WaveKind and of TauUnit.
constexpr std::array<std::string_view, 7> waveWords { "square",   "pulse",    "staircase", "rounded",
                                                      "triangle", "sawtooth", "outphased" };
constexpr std::array<std::string_view, 2> tauWords { "periods", "seconds" };

constexpr int mostRanks = 8;
constexpr ValueRange dutyRange { "duty", Quantity::number, 0.001, 0.999 };
constexpr ValueRange rankWeightRange { "weight of a rank", Quantity::number, -1000.0, 1000.0 };
constexpr ValueRange outphaseRange { "outphasing weight", Quantity::number, 0.0, 1.0 };
constexpr ValueRange tauPeriodsRange { "time constant in periods", Quantity::number, 1e-4, 100.0 };
constexpr ValueRange tauSecondsRange { "time constant", Quantity::time, 1e-8, 10.0 };
constexpr ValueRange peakToPeakRange { "voltage peak to peak", Quantity::voltage, 0.0, 1e4 };

void readStaircase (FieldReader& fields, Wave& wave)
{
    constexpr int usualRanks = 4;
    if (fields.has ("weights"))
        wave.weights = fields.quantities ("weights", rankWeightRange, 1, mostRanks);
    wave.ranks = fields.whole ("ranks", 1, mostRanks,
                               wave.weights.empty() ? usualRanks : static_cast<int> (wave.weights.size()));
    if (! wave.weights.empty() && wave.weights.size() != static_cast<std::size_t> (wave.ranks))
        fields.refuse ("weights", "there are " + std::to_string (wave.weights.size()) + " weights for "
                                      + std::to_string (wave.ranks) + " ranks; give one for each.");
}

void readRounded (FieldReader& fields, Wave& wave)
{
    wave.tauUnit = static_cast<TauUnit> (fields.choice ("tauIn", tauWords, 0));
    const auto& range = wave.tauUnit == TauUnit::seconds ? tauSecondsRange : tauPeriodsRange;
    wave.riseTau = fields.quantity ("riseTau", range);
    wave.fallTau = fields.quantity ("fallTau", range, wave.riseTau);
}

Wave readWave (FieldReader& fields)
{
    Wave wave;
    wave.kind = static_cast<WaveKind> (fields.choice ("wave", waveWords));
    switch (wave.kind)
    {
        case WaveKind::square:
            wave.duty = fields.quantity ("duty", dutyRange, wave.duty);
            break;
        case WaveKind::pulse:
            wave.duty = fields.quantity ("duty", dutyRange);
            break;
        case WaveKind::staircase:
            readStaircase (fields, wave);
            break;
        case WaveKind::rounded:
            readRounded (fields, wave);
            break;
        case WaveKind::outphased:
            wave.outphaseWeight = fields.quantity ("weight", outphaseRange, wave.outphaseWeight);
            break;
        case WaveKind::triangle:
        case WaveKind::sawtooth:
            break;
    }
    return wave;
}

JsonTree tauTree (double tau, TauUnit unit)
{
    return unit == TauUnit::seconds ? quantityTree (tau, Quantity::time) : numberTree (tau);
}

void writeWave (const Wave& wave, JsonTree& tree)
{
    constexpr double evenDuty = 0.5;
    tree["wave"] = waveWords[static_cast<std::size_t> (wave.kind)];
    switch (wave.kind)
    {
        case WaveKind::square:
            if (wave.duty != evenDuty)
                tree["duty"] = numberTree (wave.duty);
            break;
        case WaveKind::pulse:
            tree["duty"] = numberTree (wave.duty);
            break;
        case WaveKind::staircase:
            tree["ranks"] = wave.ranks;
            if (! wave.weights.empty())
                tree["weights"] = numbersTree (wave.weights);
            break;
        case WaveKind::rounded:
            tree["riseTau"] = tauTree (wave.riseTau, wave.tauUnit);
            tree["fallTau"] = tauTree (wave.fallTau, wave.tauUnit);
            tree["tauIn"] = tauWords[static_cast<std::size_t> (wave.tauUnit)];
            break;
        case WaveKind::outphased:
            tree["weight"] = numberTree (wave.outphaseWeight);
            break;
        case WaveKind::triangle:
        case WaveKind::sawtooth:
            break;
    }
}

Footage readFootage (FieldReader& fields)
{
    const auto text = fields.textOrNumber ("footage", "8");
    try
    {
        return Footage::parse (text);
    }
    catch (const Error& fault)
    {
        fields.refuse ("footage", fault.what());
    }
}

} // namespace

WaveSource readWaveSource (FieldReader& fields)
{
    WaveSource source;
    source.wave = readWave (fields);
    source.footage = readFootage (fields);
    source.voltsPeakToPeak = fields.quantity ("vpp", peakToPeakRange, source.voltsPeakToPeak);
    source.sourceOhms = fields.quantity ("sourceOhms", ValueLimits::sourceResistance, source.sourceOhms);
    return source;
}

void writeWaveSource (const WaveSource& source, JsonTree& tree)
{
    writeWave (source.wave, tree);
    tree["footage"] = source.footage.text();
    tree["vpp"] = numberTree (source.voltsPeakToPeak);
    tree["sourceOhms"] = quantityTree (source.sourceOhms, Quantity::resistance);
}

} // namespace stopwright
