// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/HeadroomStudy.h"
#include "Study/InputSurvey.h"

#include <iosfwd>
#include <string>
#include <vector>

namespace stopwright
{

// What `stopwright headroom` prints. Threading: [control].

inline constexpr const char* headroomCsvHeader =
    "stage,preamp,role,limit_low_v,limit_high_v,peak_low_v,peak_high_v,rms_v,crest_db,below_percent,above_percent,"
    "exceeded_v,room_db,room_at_share_db,feedback_ohm,gain_ratio,series_ohm,emitter_a";

inline constexpr const char* inputsCsvHeader =
    "input,preamp,on_peak_v,on_source_ohm,on_pin_a,on_series_ohm,off_peak_v,off_source_ohm,off_pin_a,off_series_ohm";

/// Cells without a value are empty: limits, shares and room of a stage without limits, room and crest where nothing sounds.
void printHeadroomCsv (const std::vector<StageHeadroom>& stages, std::ostream& out);
void printHeadroomTable (const std::vector<StageHeadroom>& stages, double exceededPercent, std::ostream& out);

/// Which stage clips first, and what brings the margin back, a line each; last, what inputs are taken for.
void printHeadroomAdvice (const std::vector<StageHeadroom>& stages, double marginDb, std::ostream& out);

void printInputsCsv (const std::vector<InputReading>& readings, std::ostream& out);
void printInputsTable (const std::vector<InputReading>& readings, std::ostream& out);

} // namespace stopwright
