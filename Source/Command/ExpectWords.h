// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/BleedStudy.h"
#include "Study/MeterReadings.h"
#include "Study/ProbeLoad.h"
#include "Study/ThermalNoise.h"

#include <iosfwd>
#include <optional>
#include <span>

namespace stopwright
{

/// What `stopwright expect` tells of one key. The loaded ones are as the others without a probe.
struct Expectation
{
    int key = 60;
    double keyHz = 0.0;
    MeterReadings open;
    MeterReadings loaded;
    double loadedFundamentalDb = 0.0; ///< at the key's 8 ft pitch
    double sourceOhms = 0.0;          ///< magnitude at 1 kHz
    std::optional<double> cornerHz;   ///< of the probe
    BusNoise noise;                   ///< noiseGain 1 where no virtual earth is
    BleedLevels bleed;
};

inline constexpr const char* expectCsvHeader =
    "key,frequency_hz,peak_to_peak_v,highest_v,lowest_v,true_rms_v,average_meter_v,loaded_peak_to_peak_v,loaded_true_rms_v,"
    "loaded_average_meter_v,load_rms_db,load_at_pitch_db,load_corner_hz,source_ohm,noise_v,noise_gain,bleed_db,bleed_a_db,"
    "bleed_fundamentals_db";

// What is printed. Threading: [control].

void printExpectationsCsv (std::span<const Expectation> expectations, std::ostream& out);
void printExpectationsTable (std::span<const Expectation> expectations,
                             const std::optional<ProbeLoad>& probe,
                             const NoiseBand& band,
                             double strayFarads,
                             std::ostream& out);

} // namespace stopwright
