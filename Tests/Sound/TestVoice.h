// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/TestOrgan.h"
#include "Sound/InstrumentVoice.h"

#include <numbers>
#include <vector>

namespace stopwright::test
{

/// Played at 48 kHz.
InstrumentVoice voiceOf (const TestOrgan& organ);

/// The fundamental's peak volts of what sounds now at 48 kHz, after 0.2 s to settle.
double levelNow (Voice& voice, double hertz = 220.0);

/// Of the fundamental of a square of 1 V peak to peak.
inline constexpr double squareVolts = 2.0 / std::numbers::pi;

/// `frames` device frames of a voice from where it stands, in pieces of at most `pieceFrames`.
std::vector<double> renderVoice (Voice& voice, int frames, int pieceFrames = Voice::pieceFrames);

/// Peak volts of harmonic `number` of `hertz` in `samples`, by correlation over a Hann window.
double harmonicVolts (const std::vector<double>& samples, double rateHz, double hertz);

} // namespace stopwright::test
