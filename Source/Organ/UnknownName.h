// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Instrument.h"

#include <span>
#include <string>
#include <string_view>

namespace stopwright
{

/// What a name that none of `names` is gets for an answer, in one sentence or two: that there is no such `what` ("stop",
/// "division"), which of them is nearest by spelling, and which there are. Threading: [control].
std::string unknownNameWords (std::string_view what, std::string_view name, std::span<const std::string_view> names);

/// Answers a name under which nothing can be studied: of a blank tablet, of a coupler, or of nothing in the instrument.
/// Threading: [control]. Fails: always, with Error.
[[noreturn]] void refuseStop (const Instrument& instrument, std::string_view name);

} // namespace stopwright
