// SPDX-License-Identifier: GPL-3.0-or-later
#include "Support/Spectrum.h"
#include "Support/Tolerances.h"
#include "Tone/FourierSeries.h"
#include "ToneBench.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

constexpr double rateHz = 192000.0;

/// C8 of the 2.00024 MHz clock: 25003 periods last 478 * 2400 samples at 192 kHz, so every harmonic is a whole bin.
constexpr std::size_t frames = 478UL * 2400;
constexpr long long cycles = 25003;

/// Greatest distance of the rendered harmonics up to 20 kHz from the series, in volts, phases and delay included.
double worstDistance (const Wave& rendered, const Wave& expected)
{
    const Tuning tuning = Tuning::topOctave (2000240.0, toneBench::divisors, 8, 120);
    GeneratorBank bank (tuning, { rendered }, rateHz, 4096);
    const Generator c8 = *tuning.generatorFor (108, Footage {});
    const auto samples = toneBench::rendered (bank, 0, c8, frames, 4096);

    double worst = 0.0;
    for (int n = 1; n <= 4; ++n)
    {
        // bin() is the amplitude of a cosine; the series counts sines. All comes out delayByFrames late.
        const double late = 2.0 * std::numbers::pi * static_cast<double> (n * cycles) / static_cast<double> (frames);
        const Complex measured =
            bin (samples, n * cycles) * std::polar (1.0, late * bank.delayByFrames()) * Complex (0.0, 1.0);
        worst = std::max (worst, std::abs (measured - fourierCoefficient (expected, n, c8, tuning)));
    }
    return worst;
}

} // namespace

TEST (SeriesRendering, RealClockIsBinExactInAmplitudeAndPhase)
{
    for (const Wave& wave :
         { Wave {}, Wave { .duty = 0.3 }, Wave { .kind = WaveKind::staircase, .ranks = 2 },
           Wave { .kind = WaveKind::triangle }, Wave { .kind = WaveKind::sawtooth },
           Wave { .kind = WaveKind::outphased, .outphaseWeight = 0.475 },
           Wave { .kind = WaveKind::rounded, .riseTau = 0.05, .fallTau = 0.5 },
           Wave { .kind = WaveKind::rounded, .riseTau = 2e-5, .fallTau = 2e-5, .tauUnit = TauUnit::seconds } })
        EXPECT_LT (worstDistance (wave, wave), 1e-6) << waveName (wave.kind);

    EXPECT_GT (worstDistance (Wave { .duty = 0.3 }, Wave { .duty = 0.3001 }), 1e-5)
        << "a duty 0.01 % off is told apart";
}

TEST (SeriesRendering, BrokenBackAndSilentTopsFollowTheSeries)
{
    const Wave staircase { .kind = WaveKind::staircase, .ranks = 4 };
    for (const TopBehaviour top : { TopBehaviour::silent, TopBehaviour::breakBack })
    {
        const Tuning tuning = Tuning::topOctave (2000000.0, toneBench::divisors, 8, 120, top);
        GeneratorBank bank (tuning, { staircase }, rateHz, 4096);
        const Generator c7 = *tuning.generatorFor (96, Footage {});
        const auto samples = toneBench::rendered (bank, 0, c7, 956UL * 12, 4096);

        for (int n = 1; n <= 9; ++n)
            EXPECT_NEAR (std::abs (bin (samples, n * 125LL)), std::abs (fourierCoefficient (staircase, n, c7, tuning)),
                         1e-6)
                << n;
    }
}

} // namespace stopwright
