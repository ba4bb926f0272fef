// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <string>
#include <string_view>

namespace stopwright
{

/// How the size of an alternating voltage is told.
enum class LevelUnit
{
    voltsPeakToPeak,
    voltsRms,
    dbv, ///< dB re 1 V rms
    dbu  ///< dB re sqrt (0.6) V = 0.7746 V rms, which is 1 mW in 600 ohm
};

inline constexpr std::array levelUnits { LevelUnit::voltsPeakToPeak, LevelUnit::voltsRms, LevelUnit::dbv,
                                         LevelUnit::dbu };

/// "V peak to peak", "V rms", "dBV", "dBu". Threading: [any].
std::string_view levelUnitName (LevelUnit unit) noexcept;

/// The level of a sine of that peak. Range: peakVolts >= 0; 0 gives minus infinity in dB.
/// Threading: [any]. Source: closed form; the reference of dBu is that of Recommendation ITU-R V.574, from memory.
double levelOfSine (double peakVolts, LevelUnit unit) noexcept;

/// The level of anything of that rms. Peak to peak it is that of the sine with the same rms: what a meter that is
/// calibrated for sines would show, not what a scope does. Range and threading as above.
double levelOfRms (double rmsVolts, LevelUnit unit) noexcept;

/// A level with its unit, for the eye (UTF-8): "1.23 V pp", "435 mV rms", "−7.2 dBV"; "no signal" for minus infinity in
/// dB. Threading: [control].
std::string levelText (double level, LevelUnit unit);

} // namespace stopwright
