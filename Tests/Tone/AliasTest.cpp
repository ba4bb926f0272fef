// SPDX-License-Identifier: GPL-3.0-or-later
#include "Support/Spectrum.h"
#include "Support/Tolerances.h"
#include "Tone/FourierSeries.h"
#include "ToneBench.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <string>

namespace stopwright
{

namespace
{

#ifdef STOPWRIGHT_SANITIZED
constexpr int lowestKey = 60;
constexpr int keyStep = 12;
constexpr std::array<int, 1> otherRateKeys { 119 };
#else
constexpr int lowestKey = 24; // C1
constexpr int keyStep = 1;
constexpr std::array<int, 3> otherRateKeys { 48, 97, 119 };
#endif

constexpr int highestKey = 120; // C9
constexpr double squareFundamental = 2.0 / std::numbers::pi;

struct Reading
{
    double aliasDb = -400.0; ///< worst component that is no harmonic, 20 Hz - 20 kHz, re the fundamental of a square
    double harmonicDb = 0.0; ///< worst harmonic up to 20 kHz against the series, of those above -60 dB re a square
};

/// All there is in the samples: `cycles` periods, a number that has no factor in common with their count, so that nothing
/// that folds can hide under a harmonic.
Reading readingOf (const std::vector<double>& samples,
                   long long cycles,
                   double rateHz,
                   const Wave& wave,
                   Generator generator,
                   const Tuning& tuning)
{
    Reading reading;
    const std::vector<double> levels = amplitudes (samples);
    const double binHz = rateHz / static_cast<double> (samples.size());
    const auto last = static_cast<std::size_t> (20000.0 / binHz);

    for (auto k = static_cast<std::size_t> (std::ceil (20.0 / binHz)); k <= last; ++k)
    {
        if (static_cast<long long> (k) % cycles != 0)
        {
            reading.aliasDb = std::max (reading.aliasDb, 20.0 * std::log10 (levels[k] / squareFundamental + 1e-20));
            continue;
        }

        const int n = static_cast<int> (static_cast<long long> (k) / cycles);
        const double expected = std::abs (fourierCoefficient (wave, n, generator, tuning));
        if (expected > 1e-3 * squareFundamental)
            reading.harmonicDb = std::max (reading.harmonicDb, std::abs (20.0 * std::log10 (levels[k] / expected)));
    }
    return reading;
}

/// At 2.000000 MHz and 192 kHz, 125 periods of clock / N / 2^j last 12 N 2^j samples: bin-exact at the pitches of a real
/// organ (0.2 cent below those of 2.00024 MHz).
Reading readingAt192k (GeneratorBank& bank, int waveIndex, const Wave& wave, int key)
{
    const Tuning& tuning = bank.tuning();
    const Generator generator = *tuning.generatorFor (key, Footage {});
    const double periods = 125.0 * bank.sampleRateHz() / tuning.frequencyHz (generator);
    bank.restart();
    const auto samples =
        toneBench::rendered (bank, waveIndex, generator, static_cast<std::size_t> (std::llround (periods)), 8192);
    return readingOf (samples, 125, bank.sampleRateHz(), wave, generator, tuning);
}

void expectNoAliasAtAnyKey (const std::string& name, const Wave& wave, double ownFundamentalBelowDb = 0.0)
{
    const Tuning tuning = Tuning::topOctave (2000000.0, toneBench::divisors, 8, highestKey);
    GeneratorBank bank (tuning, { wave }, 192000.0, 8192);
    Reading worst;
    int worstKey = 0;

    for (int key = lowestKey; key <= highestKey; key += keyStep)
    {
        const Reading reading = readingAt192k (bank, 0, wave, key);
        const double fundamental =
            std::abs (fourierCoefficient (wave, 1, *tuning.generatorFor (key, Footage {}), tuning));
        const double ownDb = 20.0 * std::log10 (fundamental / squareFundamental);
        EXPECT_LE (reading.aliasDb, tolerance::aliasDb) << name << " key " << key;
        EXPECT_LE (reading.aliasDb - std::max (ownDb, ownFundamentalBelowDb), tolerance::aliasDb)
            << name << " key " << key;
        EXPECT_LE (reading.harmonicDb, tolerance::audibleDb) << name << " key " << key;
        worstKey = reading.aliasDb > worst.aliasDb ? key : worstKey;
        worst.aliasDb = std::max (worst.aliasDb, reading.aliasDb);
        worst.harmonicDb = std::max (worst.harmonicDb, reading.harmonicDb);
    }

    std::printf ("%-28s worst alias %7.1f dB (key %d), worst harmonic %.6f dB\n", name.c_str(), worst.aliasDb, worstKey,
                 worst.harmonicDb);
}

} // namespace

// One test for all waves, since most of the time goes into preparing transforms of so many lengths. A narrow pulse is
// held to the bar re its own, weaker fundamental as well.
TEST (Alias, EveryWaveKeepsTheBarAtEveryKey)
{
    expectNoAliasAtAnyKey ("square", Wave {});
    expectNoAliasAtAnyKey ("square 30 %", Wave { .duty = 0.3 });
    expectNoAliasAtAnyKey ("pulse 1/8", Wave { .kind = WaveKind::pulse, .duty = 0.125 }, -40.0);
    expectNoAliasAtAnyKey ("pulse 2 %", Wave { .kind = WaveKind::pulse, .duty = 0.02 }, -40.0);
    expectNoAliasAtAnyKey ("staircase, 4 ranks", Wave { .kind = WaveKind::staircase, .ranks = 4 });
    expectNoAliasAtAnyKey ("triangle", Wave { .kind = WaveKind::triangle });
    expectNoAliasAtAnyKey ("sawtooth", Wave { .kind = WaveKind::sawtooth });
    expectNoAliasAtAnyKey ("outphased 0.475", Wave { .kind = WaveKind::outphased, .outphaseWeight = 0.475 });
    expectNoAliasAtAnyKey ("rounded 0.1 T", Wave { .kind = WaveKind::rounded });
    expectNoAliasAtAnyKey ("rounded 0.05 T / 0.5 T",
                           Wave { .kind = WaveKind::rounded, .riseTau = 0.05, .fallTau = 0.5 });
    expectNoAliasAtAnyKey ("rounded 0.0001 T / 0.001 T",
                           Wave { .kind = WaveKind::rounded, .riseTau = 0.0001, .fallTau = 0.001 });
    expectNoAliasAtAnyKey (
        "rounded 5 us / 200 us",
        Wave { .kind = WaveKind::rounded, .riseTau = 5e-6, .fallTau = 2e-4, .tauUnit = TauUnit::seconds });
}

TEST (Alias, OtherRatesKeepTheBar)
{
    constexpr std::size_t frames = 65536;
    const std::vector<Wave> waves { Wave {}, Wave { .kind = WaveKind::triangle }, Wave { .kind = WaveKind::sawtooth },
                                    Wave { .kind = WaveKind::rounded } };

    for (const double rateHz : { 44100.0, 48000.0, 96000.0, 176400.0, 384000.0 })
        for (const int key : otherRateKeys)
        {
            // An odd number of cycles next to the key's pitch; the tuning is moved to it.
            const double pitchHz = 440.0 * std::exp2 ((key - 69) / 12.0);
            const long long cycles = 2 * std::llround (0.5 * pitchHz * frames / rateHz) + 1;
            const double hz = static_cast<double> (cycles) * rateHz / frames;
            const Tuning tuning =
                Tuning::equalTempered (hz * std::exp2 ((69 - key) / 12.0), std::max (100.0, hz * 1.001));
            GeneratorBank bank (tuning, waves, rateHz, 4096);
            const Generator generator = *tuning.generatorFor (key, Footage {});

            for (int w = 0; w < static_cast<int> (waves.size()); ++w)
            {
                bank.restart();
                const Wave& wave = waves[static_cast<std::size_t> (w)];
                const auto samples = toneBench::rendered (bank, w, generator, frames, 4096);
                const Reading reading = readingOf (samples, cycles, rateHz, wave, generator, tuning);
                EXPECT_LE (reading.aliasDb, tolerance::aliasDb) << rateHz << ' ' << waveName (wave.kind) << ' ' << key;
                EXPECT_LE (reading.harmonicDb, tolerance::audibleDb)
                    << rateHz << ' ' << waveName (wave.kind) << ' ' << key;
            }
        }
}

// The twin: the same reading of a square that jumps between samples as it comes.
TEST (Alias, ReadingFindsTheAliasOfANaiveSquare)
{
    const Tuning tuning = Tuning::topOctave (2000000.0, toneBench::divisors, 8, highestKey);
    const Generator c8 = *tuning.generatorFor (108, Footage {});
    constexpr long long frames = 478LL * 12;
    std::vector<double> samples (static_cast<std::size_t> (frames));
    for (long long i = 0; i < frames; ++i)
        samples[static_cast<std::size_t> (i)] = i * 250 % (2 * frames) < frames ? 0.5 : -0.5;

    EXPECT_GT (readingOf (samples, 125, 192000.0, Wave {}, c8, tuning).aliasDb, -60.0);
}

} // namespace stopwright
