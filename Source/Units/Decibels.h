// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// Amplitude ratio as decibels: 20 log10 (ratio).
///
/// Units/range: ratio >= 0, of volts or of any other amplitude; 0 gives minus infinity, a negative ratio NaN.
/// Threading: [any]
double toDecibels (double ratio) noexcept;

/// Decibels as amplitude ratio: 10^(decibels / 20).
///
/// Units/range: any; minus infinity gives 0.
/// Threading: [any]
double fromDecibels (double decibels) noexcept;

} // namespace stopwright
