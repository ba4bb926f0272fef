// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/ReadingChoices.h"
#include "Bench/ReadingResult.h"
#include "Sheet/ReadingPicture.h"

#include <span>
#include <string>

namespace stopwright
{

// A reading on its way to window, file and clipboard. Threading: [control].

/// "Harmonics", "Response", "Wave", "Compass", "Stages".
const char* readingName (ReadingKind kind) noexcept;

/// The picture of a result; one without a reading is empty. `clipped`: stages whose lamp is lit.
ReadingPicture readingPicture (const ReadingResult& result,
                               const ReadingChoices& choices,
                               std::span<const std::string> clipped,
                               const ReadingFormat& format);

/// The numbers of a result as CSV; empty without a reading.
std::string readingCsv (const ReadingResult& result, const ReadingChoices& choices);

/// What a result is of, in words: "C4, 262 Hz, at the card's output"; the shorter of two where room is scarce.
std::string readingPlace (const ReadingResult& result, bool isShort);

} // namespace stopwright
