// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/DocumentReport.h"
#include "Organ/Card.h"

#include <filesystem>

namespace stopwright
{

/// Taps, parts, nodes and states of a card, where it rests if it has diodes, transistors or supplies, and all that its network check finds. Threading: [control].
DocumentReport reportOf (const Card& card, const std::filesystem::path& file);

/// "1 resistor", "3 resistors". Threading: [control].
std::string counted (std::size_t count, const std::string& what);

} // namespace stopwright
