// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/AsFound.h"
#include "Organ/DocumentFields.h"

#include <optional>
#include <string>

namespace stopwright
{

// The field asFound of a stop or a tap, and what it was altered for. For the .cpp files of this folder only.
// Threading: [control]. Fails: DocumentError.

/// Which unknown fields of the objects are kept under.
inline constexpr std::string_view stopAsFound = "stopAsFound";
inline constexpr std::string_view tapAsFound = "tapAsFound";

std::optional<AsFoundStop> readStopAsFound (FieldReader& stop, const std::string& name, UnknownFieldStore& unknown);
std::optional<AsFoundTap> readTapAsFound (FieldReader& tap, const std::string& name, UnknownFieldStore& unknown);

/// Left out when nothing is noted in it.
void writeAsFound (const std::optional<AsFoundStop>& asFound,
                   const std::string& name,
                   JsonTree& stop,
                   UnknownFieldSource& unknown);
void writeAsFound (const std::optional<AsFoundTap>& asFound,
                   const std::string& name,
                   JsonTree& tap,
                   UnknownFieldSource& unknown);

/// Fails: Error on a date that is none, or on more text than a document holds.
void requireHeld (const AlterationNote& note);

} // namespace stopwright
