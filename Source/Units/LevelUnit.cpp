// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/LevelUnit.h"

#include "Units/Decibels.h"
#include "Units/Engineering.h"

#include <charconv>
#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double silenceDb = -300.0; ///< what is left of amplitudes that cancel

double dbuReferenceVolts() noexcept
{
    return std::sqrt (1e-3 * 600.0);
}

std::string decibelText (double level)
{
    constexpr int decimals = 1;
    std::array<char, 32> digits {};
    const auto end = std::to_chars (digits.data(), digits.data() + digits.size(), std::abs (level),
                                    std::chars_format::fixed, decimals)
                         .ptr;
    const std::string magnitude (digits.data(), end);
    return level < 0.0 && magnitude != "0.0" ? "\u2212" + magnitude : magnitude;
}

} // namespace

std::string_view levelUnitName (LevelUnit unit) noexcept
{
    constexpr std::array<std::string_view, 4> names { "V peak to peak", "V rms", "dBV", "dBu" };
    return names[static_cast<std::size_t> (unit)];
}

double levelOfSine (double peakVolts, LevelUnit unit) noexcept
{
    return unit == LevelUnit::voltsPeakToPeak ? 2.0 * peakVolts : levelOfRms (peakVolts / std::numbers::sqrt2, unit);
}

double levelOfRms (double rmsVolts, LevelUnit unit) noexcept
{
    switch (unit)
    {
        case LevelUnit::voltsPeakToPeak:
            return 2.0 * std::numbers::sqrt2 * rmsVolts;
        case LevelUnit::voltsRms:
            return rmsVolts;
        case LevelUnit::dbv:
            return toDecibels (rmsVolts);
        case LevelUnit::dbu:
            break;
    }
    return toDecibels (rmsVolts / dbuReferenceVolts());
}

std::string levelText (double level, LevelUnit unit)
{
    if (unit == LevelUnit::voltsPeakToPeak)
        return formatForReading (level, Quantity::voltage) + " pp";
    if (unit == LevelUnit::voltsRms)
        return formatForReading (level, Quantity::voltage) + " rms";
    if (level < silenceDb)
        return "no signal";
    return decibelText (level) + " " + std::string (levelUnitName (unit));
}

} // namespace stopwright
