// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace stopwright
{

/// Text of unknown origin in double quotes, fit to stand in a message: at most 60 bytes and then "...", control
/// characters and bytes that are not UTF-8 as "?".
///
/// Threading: [control]
std::string quotedText (std::string_view text);

} // namespace stopwright
