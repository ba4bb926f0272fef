// SPDX-License-Identifier: GPL-3.0-or-later
//
// stopwright-measure-capture FILE.wav FREQUENCY
//
// Prints one line per reading of the first channel, for the live test: rms, A-weighted rms and peak in dB re full scale, samples that are
// not finite, the frequency of the partial nearest to FREQUENCY and its level, and the strongest 50 ms of what lies above
// 6 kHz and below 20 kHz between the partials (dB re the rms of the whole): where a click shows and a steady tone has nothing.

#include "Support/Spectrum.h"
#include "Units/AWeighting.h"
#include "Units/Decibels.h"

#include <sndfile.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <numbers>
#include <vector>

namespace
{

using stopwright::toDecibels;

constexpr double residueAboveHz = 6000.0;
constexpr double residueBelowHz = 20000.0; // beyond it the way down to the device rate may fold
constexpr double residueSeconds = 0.05;
constexpr double besidePartialHz = 110.0; // more than the half main lobe of the window, four bins of 20 Hz

struct Sound
{
    double rateHz = 0.0;
    std::vector<double> samples;
    int differingFrames = 0; ///< where the two channels differ
};

Sound read (const char* path)
{
    SF_INFO format {};
    auto* file = sf_open (path, SFM_READ, &format);
    if (file == nullptr || format.channels < 1)
    {
        std::fprintf (stderr, "stopwright-measure-capture: %s cannot be read.\n", path);
        std::exit (1);
    }
    const auto channels = static_cast<std::size_t> (format.channels);
    std::vector<float> interleaved (static_cast<std::size_t> (format.frames) * channels);
    sf_readf_float (file, interleaved.data(), format.frames);
    sf_close (file);

    Sound sound;
    sound.rateHz = format.samplerate;
    for (std::size_t frame = 0; frame < static_cast<std::size_t> (format.frames); ++frame)
    {
        sound.samples.push_back (static_cast<double> (interleaved[frame * channels]));
        if (std::memcmp (&interleaved[frame * channels], &interleaved[frame * channels + channels - 1], sizeof (float))
            != 0)
            ++sound.differingFrames;
    }
    return sound;
}

double rms (const std::vector<double>& samples)
{
    double sum = 0.0;
    for (const double sample : samples)
        sum += sample * sample;
    return std::sqrt (sum / static_cast<double> (std::max<std::size_t> (1, samples.size())));
}

/// The rms behind frequency weighting A, of all from 20 Hz up.
double weightedRms (const Sound& sound)
{
    const auto levels = stopwright::amplitudes (sound.samples);
    const double binHz = sound.rateHz / static_cast<double> (std::max<std::size_t> (1, sound.samples.size()));
    double power = 0.0;
    for (std::size_t bin = static_cast<std::size_t> (20.0 / binHz); bin < levels.size(); ++bin)
    {
        const double weighted = levels[bin] * stopwright::aWeighting (binHz * static_cast<double> (bin));
        power += 0.5 * weighted * weighted;
    }
    return std::sqrt (power);
}

/// Frequency with the highest level within 3 % of the one expected, by narrowing a search over windowed bins.
double nearestPartialHz (const Sound& sound, double expectedHz)
{
    double best = expectedHz;
    double bestLevel = 0.0;
    for (double step = expectedHz * 0.002, from = expectedHz * 0.97, to = expectedHz * 1.03; step > 1e-4;
         step *= 0.2, from = best - 6.0 * step, to = best + 6.0 * step)
    {
        for (double hertz = from; hertz <= to; hertz += step)
        {
            const double level = std::abs (stopwright::windowedPartial (sound.samples, hertz, sound.rateHz));
            if (level > bestLevel)
            {
                bestLevel = level;
                best = hertz;
            }
        }
    }
    return best;
}

/// Power between the partials of `partialHz` in one piece, which is windowed (4-term Blackman-Harris, side lobes below
/// -92 dB: F. J. Harris, Proc. IEEE 66 (1978) 51).
double residuePower (const double* samples, std::size_t frames, double rateHz, double partialHz)
{
    std::vector<double> piece (frames);
    for (std::size_t frame = 0; frame < frames; ++frame)
    {
        const double place = 2.0 * std::numbers::pi * static_cast<double> (frame) / static_cast<double> (frames);
        const double window =
            0.35875 - 0.48829 * std::cos (place) + 0.14128 * std::cos (2.0 * place) - 0.01168 * std::cos (3.0 * place);
        piece[frame] = window * samples[frame];
    }
    const auto levels = stopwright::amplitudes (piece);
    const double binHz = rateHz / static_cast<double> (frames);
    double power = 0.0;
    for (auto bin = static_cast<std::size_t> (residueAboveHz / binHz); bin < levels.size(); ++bin)
    {
        const double hertz = binHz * static_cast<double> (bin);
        if (hertz > residueBelowHz)
            break;
        const double besideHz = std::abs (hertz - partialHz * std::round (hertz / partialHz));
        if (besideHz > besidePartialHz)
            power += 0.5 * levels[bin] * levels[bin];
    }
    return power / 0.2580; // the power of the window
}

double strongestResidue (const Sound& sound, double partialHz)
{
    const auto frames = static_cast<std::size_t> (residueSeconds * sound.rateHz);
    double strongest = 0.0;
    for (std::size_t start = 0; start + frames <= sound.samples.size(); start += frames / 4)
        strongest = std::max (strongest, residuePower (&sound.samples[start], frames, sound.rateHz, partialHz));
    return std::sqrt (strongest);
}

} // namespace

int main (int argumentCount, char** arguments)
{
    if (argumentCount != 3)
    {
        std::fprintf (stderr, "usage: stopwright-measure-capture FILE.wav FREQUENCY\n");
        return 2;
    }
    auto sound = read (arguments[1]);
    const auto isBad = [] (double sample) { return ! std::isfinite (sample); };
    const auto notFinite = std::count_if (sound.samples.begin(), sound.samples.end(), isBad);
    std::replace_if (sound.samples.begin(), sound.samples.end(), isBad, 0.0);

    double peak = 0.0;
    for (const double sample : sound.samples)
        peak = std::max (peak, std::abs (sample));
    const double level = rms (sound.samples);
    std::printf ("notfinite %ld\nseconds %.3f\nchannelsdiffer %d\nrms %.2f\nweighted %.2f\npeak %.2f\n",
                 static_cast<long> (notFinite), static_cast<double> (sound.samples.size()) / sound.rateHz,
                 sound.differingFrames, std::max (-200.0, toDecibels (level)),
                 std::max (-200.0, toDecibels (weightedRms (sound))), std::max (-200.0, toDecibels (peak)));
    if (level < 1e-9)
        return 0;
    const double hertz = nearestPartialHz (sound, std::atof (arguments[2]));
    std::printf ("partialhz %.3f\npartialdb %.2f\nresidue %.2f\n", hertz,
                 toDecibels (std::abs (stopwright::windowedPartial (sound.samples, hertz, sound.rateHz))),
                 toDecibels (strongestResidue (sound, hertz) / level));
    return 0;
}
