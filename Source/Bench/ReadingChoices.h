// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/TargetMask.h"
#include "Sheet/CompassDrawing.h"
#include "Sheet/WaveDrawing.h"
#include "Study/StageReading.h"
#include "Units/LevelUnit.h"

#include <array>
#include <memory>
#include <optional>
#include <string>

namespace stopwright
{

enum class ReadingKind
{
    harmonics,
    response,
    wave,
    compass,
    stages
};

inline constexpr std::array readingKinds { ReadingKind::harmonics, ReadingKind::response, ReadingKind::wave,
                                           ReadingKind::compass, ReadingKind::stages };

/// What a division of the wave's picture can be set to: scopeSteps from the lowest to the highest. Volts and seconds.
struct ScopeRange
{
    static constexpr double lowestVolts = 100e-6;
    static constexpr double highestVolts = 10.0;
    static constexpr double lowestSeconds = 20e-6;
    static constexpr double highestSeconds = 20e-3;
};

/// What is looked at, where and how. Threading: [any].
struct ReadingChoices
{
    ReadingKind kind = ReadingKind::harmonics;
    std::optional<std::string> probe {};       ///< a node of the card; its output without one
    std::shared_ptr<const TargetMask> mask {}; ///< beside the harmonics; null for none
    bool hasPhase = false;                     ///< of the response
    WaveChoice wave {};
    CompassLevel level = CompassLevel::rms;
    StageKeys stageKeys = StageKeys::tenNotes;
    LevelUnit unit = LevelUnit::voltsRms;
};

} // namespace stopwright
