// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

/// How close is close enough, each bound with its reason. A test that needs another one says why beside it.
namespace stopwright::tolerance
{

/// Relative. Two ways through the same algebra in double: some hundred roundings of 1.1e-16 each.
inline constexpr double algebra = 1e-12;

/// Relative. Computed response against a closed form: algebra plus the condition of a solved matrix (up to about 1e3).
inline constexpr double transferFunction = 1e-9;

/// Relative. Discretised response against the analogue one at the warped frequency. The identity is exact, so that a
/// wrong sign, a wrong warp constant or a transposed matrix cannot hide in the bound.
inline constexpr double discretisation = 1e-9;

/// Relative to the peak. Block step against the same step taken sample by sample: only the order of the sums differs.
inline constexpr double blockStep = 1e-9;

/// Relative to the peak. A kernel that must not care how its input is cut into blocks runs the very same arithmetic.
inline constexpr double blockSplit = 1e-12;

/// Absolute, for samples within +-1. Through a float buffer: 6e-8 a rounding, over sums of some dozen voices.
inline constexpr double floatPath = 2e-4;

/// dB. What is rendered in double against its formula.
inline constexpr double runtimeDb = 0.001;

/// dB. A level that is heard, against its formula: a fifth of the half decibel or so that an ear finds in one partial is
/// 0.1, and this is half of it again (common practice, no source).
inline constexpr double audibleDb = 0.05;

/// dB. A rendered partial (down to -60 dB, up to 10 kHz) against the analysis: the project's own bar for "what is heard
/// is what is drawn". Most of it goes to the warp of the bilinear step, which at 176.4 kHz shifts 10 kHz by 1.07 %: that
/// is 0.09 dB for each 6 dB per octave of slope.
inline constexpr double renderedLevelDb = 0.2;

/// Partials below this, re the strongest, are not held to renderedLevelDb.
inline constexpr double renderedFloorDb = -60.0;

/// dB re the fundamental of a square: the worst component that is no harmonic, 20 Hz to 20 kHz.
inline constexpr double aliasDb = -120.0;

/// dB re the steady tone, above 6 kHz: what the fastest turn of a knob may leave behind.
inline constexpr double knobResidueDb = -60.0;

/// Cents. Far below any ear: one beat in eleven minutes at middle C.
inline constexpr double tuningCents = 0.01;

} // namespace stopwright::tolerance
