// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/DocumentError.h"
#include "Organ/TargetMask.h"

#include <filesystem>
#include <string>
#include <string_view>

namespace stopwright
{

/// As parseCard, readCard, cardText and writeCard, for documents of kind "mask".
TargetMask parseMask (std::string_view text, std::string_view origin);
TargetMask readMask (const std::filesystem::path& file);
std::string maskText (const TargetMask& mask);
void writeMask (const TargetMask& mask, const std::filesystem::path& file);

} // namespace stopwright
