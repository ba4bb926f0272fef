// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/LackReason.h"

#include "Study/FootagePitch.h"
#include "Tone/FourierSeries.h"

#include <array>
#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

/// A cause and its number.
struct Cause
{
    LackCause cause = LackCause::fallsOff;
    double number = 0.0;
};

/// The smallest multiple that is an exact null, or 0.
int firstNull (double duty)
{
    constexpr int most = 2000;
    for (int n = 1; n <= most; ++n)
        if (std::abs (n * duty - std::round (n * duty)) < samePitchTolerance)
            return n;
    return 0;
}

Cause causeInPulse (double duty, int n)
{
    constexpr double half = 0.5;
    constexpr double nearHalf = 0.0501;
    constexpr double nearNull = 0.5;
    const bool isEven = n % 2 == 0;
    if (duty == half && isEven)
        return { LackCause::halfWave };
    const int null = firstNull (duty);
    if (null != 0 && n % null == 0)
        return { LackCause::pulseNull, static_cast<double> (null) };
    if (isEven && std::abs (duty - half) <= nearHalf)
        return { LackCause::dutyError, duty };
    if (std::abs (std::sin (std::numbers::pi * n * duty)) <= nearNull)
        return { LackCause::nearPulseNull, 1.0 / duty };
    return {};
}

/// Harmonic n = 2^v odd of a staircase comes from rank v alone.
Cause causeInStaircase (const Wave& wave, int n, Generator generator, const Tuning& tuning)
{
    int rank = 0;
    for (int odd = n; odd % 2 == 0; odd /= 2)
        ++rank;
    if (rank >= wave.ranks)
        return { LackCause::missingRank, std::ldexp (1.0, wave.ranks) };
    if (wave.rankWeight (rank) == 0.0)
        return { LackCause::rankOfNoWeight, rank + 1.0 };
    const double rankHz = std::ldexp (tuning.frequencyHz (generator), rank);
    const auto sounding = tuning.octavesAbove (generator, rank);
    if (! sounding)
        return { LackCause::rankWithoutGenerator, rankHz };
    if (sounding->octavesBelowTop > generator.octavesBelowTop - rank)
        return { LackCause::rankBrokenBack, rankHz };
    return {};
}

Cause causeInWave (const Wave& wave, int n, Generator generator, const Tuning& tuning)
{
    const bool isEven = n % 2 == 0;
    switch (wave.kind)
    {
        case WaveKind::square:
        case WaveKind::pulse:
            return causeInPulse (wave.duty, n);
        case WaveKind::staircase:
            return causeInStaircase (wave, n, generator, tuning);
        case WaveKind::rounded:
            return { isEven && wave.riseTau == wave.fallTau ? LackCause::halfWave : LackCause::fallsOff };
        case WaveKind::triangle:
            return { isEven ? LackCause::halfWave : LackCause::fallsOff };
        case WaveKind::outphased:
            return isEven ? Cause { LackCause::outphased, wave.outphaseWeight } : Cause {};
        case WaveKind::sawtooth:
            break;
    }
    return {};
}

/// A mutation that is borrowed from the tempered scale passes within this of the harmonic it stands for, relative: the
/// flat seventh, worst of all, is 31 cents off.
constexpr double borrowedTolerance = 0.03;

Cause causeInTap (const Tap& tap, const Tuning& tuning, int key, double harmonic)
{
    const double nominal = tap.footage.harmonicOfEightFoot();
    const double keyHz = tuning.keyHz (key);
    const auto generator = tuning.generatorFor (key, tap.footage);
    if (! generator)
        return { LackCause::noGenerator, nominal * keyHz };
    const double ratio = pitchRatio (tuning.frequencyHz (*generator), keyHz, tap.footage);
    const auto n = wholeMultiple (harmonic / ratio);
    const double octavesBack = std::round (std::log2 (nominal / ratio));
    const auto unbroken = wholeMultiple (harmonic / nominal);
    if (octavesBack >= 1.0 && unbroken && std::abs (fourierCoefficient (tap.wave, *unbroken, nominal * keyHz)) > 0.0)
        return { LackCause::brokenBack, ratio };
    if (n)
        return causeInWave (tap.wave, *n, *generator, tuning);
    const double nearest = std::round (harmonic / ratio) * ratio;
    if (nearest > 0.0 && unbroken && std::abs (nearest / harmonic - 1.0) < borrowedTolerance)
        return { LackCause::besideHarmonic, nearest };
    return { LackCause::noMultiple, ratio };
}

} // namespace

LackReason lackReason (const Tap& tap, std::size_t index, const Tuning& tuning, int key, double harmonic)
{
    const auto [cause, number] = causeInTap (tap, tuning, key, harmonic);
    return { index, cause, number };
}

std::string_view causeWord (LackCause cause) noexcept
{
    constexpr std::array<std::string_view, 16> words { "above 20 kHz",
                                                       "no generator",
                                                       "no multiple of its pitch",
                                                       "beside the harmonic",
                                                       "broken back",
                                                       "half-wave symmetry",
                                                       "only by its duty",
                                                       "pulse null",
                                                       "near a pulse null",
                                                       "missing rank",
                                                       "rank of no weight",
                                                       "rank without generator",
                                                       "rank broken back",
                                                       "outphased",
                                                       "falls off",
                                                       "cancelled by another tap" };
    return words[static_cast<std::size_t> (cause)];
}

} // namespace stopwright
