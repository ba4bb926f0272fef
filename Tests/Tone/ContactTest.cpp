// SPDX-License-Identifier: GPL-3.0-or-later
#include "Support/Spectrum.h"
#include "Tone/FourierSeries.h"
#include "Tone/KeyerBank.h"
#include "Tone/WaveCorners.h"
#include "ToneBench.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <cstdio>
#include <numbers>
#include <vector>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

constexpr int frames = 8192;
constexpr int releaseAfter = 2000;

Tuning organTuning()
{
    return Tuning::topOctave (2000240.0, toneBench::divisors, 8, 120);
}

/// What a bus gives when a contact closes at one frame and opens at another, all of it: it ends well within the block.
std::vector<double> burst (const Wave& wave, int key, double rateHz, int pressed, int length, int samples)
{
    GeneratorBank bank (organTuning(), { wave }, rateHz, samples);
    KeyerBank keyers (bank, 0, Footage {}, { .shape = KeyerShape::contact });
    keyers.keyDown (key, pressed);
    keyers.keyUp (key, pressed + length);
    std::vector<float> bus (static_cast<std::size_t> (samples));
    bank.advance (samples);
    keyers.mixInto (bus, 1.0F, bank);
    return { bus.begin(), bus.end() };
}

/// The twin: the band-limited wave simply switched on and off.
std::vector<double> switchedBurst (const Wave& wave, int key, double rateHz, int pressed, int length, int samples)
{
    GeneratorBank bank (organTuning(), { wave }, rateHz, samples);
    bank.advance (samples);
    const auto held = bank.wave (0, *bank.tuning().generatorFor (key, Footage {}));
    std::vector<double> out (held.size());
    const int late = bank.delayByFrames();
    for (int i = pressed + late + 1; i <= pressed + length + late; ++i)
        out[static_cast<std::size_t> (i)] = static_cast<double> (held[static_cast<std::size_t> (i)]);
    return out;
}

/// Fourier integral of the drawn lines between two instants, at one frequency: each jump gives exp (-i w t) / (i w), each
/// change of slope exp (-i w t) / (i w)^2. Source: the integral by parts, exact.
Complex transformOfLines (const WaveCorners& lines, double hz, double begin, double end, double w)
{
    Complex sum;
    const auto add = [&sum, w] (double seconds, double jump, double slopeChange)
    {
        const Complex iw (0.0, w);
        sum += std::polar (1.0, -w * seconds) * (jump / iw + slopeChange / (iw * iw));
    };

    double value = 0.0;
    double slope = 0.0;
    const auto stateAt = [&] (double seconds)
    {
        const double phase = seconds * hz - std::floor (seconds * hz);
        for (int c = 0; c < lines.count; ++c)
        {
            const auto& corner = lines.corners[static_cast<std::size_t> (c)];
            if (corner.phase <= phase)
            {
                value = corner.value + corner.slope * (phase - corner.phase);
                slope = corner.slope * hz;
            }
        }
    };

    stateAt (begin);
    add (begin, value, slope);
    for (int period = static_cast<int> (begin * hz) - 1; period <= static_cast<int> (end * hz) + 1; ++period)
        for (int c = 0; c < lines.count; ++c)
        {
            const auto& corner = lines.corners[static_cast<std::size_t> (c)];
            const double at = (period + corner.phase) / hz;
            if (at > begin && at < end)
                add (at, corner.jump, corner.slopeChange * hz);
        }
    stateAt (end);
    add (end, -value, -slope);
    return sum;
}

/// Worst distance of a burst's spectrum, 20 Hz to 20 kHz, from the Fourier integral, re the strongest bin.
double aliasDb (const std::vector<double>& samples, const Wave& wave, int key, double rateHz, int pressed, int late)
{
    const Tuning tuning = organTuning();
    const double hz = tuning.frequencyHz (*tuning.generatorFor (key, Footage {}));
    const WaveCorners lines = WaveCorners::of (wave);
    const auto bins = spectrum (samples);
    const double binHz = rateHz / static_cast<double> (samples.size());
    double worst = 0.0;
    double strongest = 0.0;

    for (std::size_t k = 1; static_cast<double> (k) * binHz <= 20000.0; ++k)
    {
        const double w = 2.0 * std::numbers::pi * static_cast<double> (k) * binHz;
        const Complex exact = 2.0 * rateHz / static_cast<double> (samples.size()) * std::polar (1.0, -w * late / rateHz)
                              * transformOfLines (lines, hz, pressed / rateHz, (pressed + releaseAfter) / rateHz, w);
        worst = std::max (worst, std::abs (bins[k] - exact));
        strongest = std::max (strongest, std::abs (exact));
    }
    return 20.0 * std::log10 (worst / strongest);
}

} // namespace

// Every frame in a row: the contact closes and opens before, on and after the wave's own edges.
TEST (Contact, HasNoAliasAtAnyInstant)
{
    constexpr double rateHz = 192000.0;
    double worst = -400.0;
    double mildestTwin = 0.0;

    for (const Wave& wave : { Wave {}, Wave { .kind = WaveKind::pulse, .duty = 0.1 },
                              Wave { .kind = WaveKind::triangle }, Wave { .kind = WaveKind::sawtooth } })
        for (const int key : { 60, 108 })
            for (int pressed = 100; pressed < 148; pressed += 3)
            {
                const auto contact = burst (wave, key, rateHz, pressed, releaseAfter, frames);
                const double db = aliasDb (contact, wave, key, rateHz, pressed, 8);
                EXPECT_LE (db, -120.0) << waveName (wave.kind) << " key " << key << " frame " << pressed;
                worst = std::max (worst, db);

                if (wave.kind == WaveKind::square && key == 108)
                {
                    const auto twin = switchedBurst (wave, key, rateHz, pressed, releaseAfter, frames);
                    mildestTwin = std::min (mildestTwin, aliasDb (twin, wave, key, rateHz, pressed, 8));
                }
            }

    EXPECT_GT (mildestTwin, -90.0) << "simply switching the wave is worse at every instant";
    std::printf ("contact: worst alias %.1f dB; the wave simply switched: at best %.1f dB\n", worst, mildestTwin);
}

TEST (Contact, StaircaseIsTheSumOfItsCutRanks)
{
    const Wave staircase { .kind = WaveKind::staircase, .ranks = 3 };
    const auto whole = burst (staircase, 84, 192000.0, 123, releaseAfter, frames);
    std::vector<double> ranks (frames);
    for (int rank = 0; rank < 3; ++rank)
    {
        const auto one = burst (Wave {}, 84 + 12 * rank, 192000.0, 123, releaseAfter, frames);
        for (std::size_t i = 0; i < ranks.size(); ++i)
            ranks[i] += std::ldexp (one[i], -rank);
    }

    for (std::size_t i = 0; i < whole.size(); ++i)
        ASSERT_NEAR (whole[i], ranks[i], 5e-7) << i;
}

// A rounded wave is rendered from its harmonics up to the last power of two below half the rate. The contact is held
// against exactly those, cut at both ends: each gives (exp (i (wn - w) t) / (i (wn - w)) and its mirror) / 2i.
TEST (Contact, RoundedWaveHasNoAliasEither)
{
    constexpr double rateHz = 192000.0;
    constexpr int key = 96;
    const Tuning tuning = organTuning();
    const Generator generator = *tuning.generatorFor (key, Footage {});
    const double hz = tuning.frequencyHz (generator);
    const int harmonics = 1 << static_cast<int> (std::log2 (0.5 * rateHz / hz));
    double worst = -400.0;

    for (const Wave& wave : { Wave { .kind = WaveKind::rounded, .riseTau = 0.1, .fallTau = 0.3 },
                              Wave { .kind = WaveKind::rounded, .riseTau = 0.001, .fallTau = 0.01 } })
        for (int pressed = 100; pressed < 148; pressed += 5)
        {
            const auto bins = spectrum (burst (wave, key, rateHz, pressed, releaseAfter, frames));
            double distance = 0.0;
            double strongest = 0.0;
            for (std::size_t k = 1; static_cast<double> (k) * rateHz / frames <= 20000.0; ++k)
            {
                const double w = 2.0 * std::numbers::pi * static_cast<double> (k) / frames;
                const auto swept = [&] (double own)
                {
                    const Complex i (0.0, own - w);
                    return (std::exp (i * static_cast<double> (pressed + releaseAfter))
                            - std::exp (i * static_cast<double> (pressed)))
                           / i;
                };

                Complex exact;
                for (int n = 1; n <= harmonics; ++n)
                {
                    const Complex c = fourierCoefficient (wave, n, generator, tuning);
                    const double own = 2.0 * std::numbers::pi * n * hz / rateHz;
                    exact += (c * swept (own) - std::conj (c) * swept (-own)) / Complex (0.0, 2.0);
                }
                exact *= 2.0 / frames * std::polar (1.0, -w * 8.0);
                distance = std::max (distance, std::abs (bins[k] - exact));
                strongest = std::max (strongest, std::abs (exact));
            }
            worst = std::max (worst, 20.0 * std::log10 (distance / strongest));
        }

    EXPECT_LE (worst, -120.0);
    std::printf ("contact on a rounded wave: worst alias %.1f dB\n", worst);
}

} // namespace stopwright
