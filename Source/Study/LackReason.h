// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"
#include "Tone/Tuning.h"

#include <cstddef>
#include <string_view>

namespace stopwright
{

/// Why a wave gives little or nothing at a harmonic of the key.
enum class LackCause
{
    aboveHearing,         ///< the partial lies above 20 kHz
    noGenerator,          ///< no generator for the key at that footage; number: hertz it would have
    noMultiple,           ///< the footage's own pitch has no such multiple; number: its pitch re 8 ft
    besideHarmonic,       ///< a borrowed mutation passes beside it; number: the harmonic where it sounds
    brokenBack,           ///< the footage sounds octaves lower on this key; number: its pitch re 8 ft
    halfWave,             ///< half-wave symmetry: no even harmonics
    dutyError,            ///< near-square: even ones only by what the duty is off one half; number: duty
    pulseNull,            ///< exactly at a null of the pulse; number: which multiples are
    nearPulseNull,        ///< half the envelope or less, near a null; number: 1 / duty
    missingRank,          ///< a staircase ends below it; number: 2^ranks, whose multiples are missing
    rankOfNoWeight,       ///< the rank that carries it has weight 0; number: of the rank, from 1
    rankWithoutGenerator, ///< the rank that carries it is above the highest generator; number: hertz it would have
    rankBrokenBack,       ///< that rank sounds lower; number: hertz it would have
    outphased,            ///< even ones are cancelled; number: the weight
    fallsOff,             ///< the wave has it, only weak
    cancelled             ///< the tap has it, another takes it away
};

/// One tap's answer. What `number` means stands with the cause; 0 where nothing does.
struct LackReason
{
    std::size_t tap = 0; ///< among the card's taps
    LackCause cause = LackCause::fallsOff;
    double number = 0.0;

    bool operator== (const LackReason&) const = default;
};

/// Why `tap` (number `index` of its card) lacks a harmonic, counted from the key's 8 ft pitch, that lies below 20 kHz and
/// that it does not have or only weak. Source: the closed Fourier series of the waves (FourierSeries.h).
/// Threading: [control].
LackReason lackReason (const Tap& tap, std::size_t index, const Tuning& tuning, int key, double harmonic);

/// "half-wave symmetry" ...: without comma or quote, for tables. Threading: [any].
std::string_view causeWord (LackCause cause) noexcept;

} // namespace stopwright
