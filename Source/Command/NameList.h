// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

/// Names separated by commas, the spaces around them apart: "Diapason 8, Oboe 8". Threading: [control].
std::vector<std::string> namesIn (std::string_view text);

} // namespace stopwright
