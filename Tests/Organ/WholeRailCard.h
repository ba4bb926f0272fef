// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/TestOrgan.h"

#include <string>
#include <vector>

namespace stopwright::test
{

/// The drawn stops of one division as a single card: every card's parts, mixing resistors, what retired stops leave, the
/// buses, and the preamps as ideal amplifiers with their coupling and bandwidth, added up as the outlets are. Its output
/// is what the analysis says of the whole way to the ear, loading included. For stages of kind amplifier and follower.
Card wholeRailCard (const TestOrgan& organ, const std::string& division);

} // namespace stopwright::test
