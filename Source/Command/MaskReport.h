// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/DocumentReport.h"
#include "Organ/TargetMask.h"

#include <filesystem>

namespace stopwright
{

/// What a mask wants, of which keys, and who says so. Threading: [control].
DocumentReport reportOf (const TargetMask& mask, const std::filesystem::path& file);

} // namespace stopwright
