// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/Decibels.h"

#include <cmath>

namespace stopwright
{

double toDecibels (double ratio) noexcept
{
    return 20.0 * std::log10 (ratio);
}

double fromDecibels (double decibels) noexcept
{
    return std::pow (10.0, decibels / 20.0);
}

} // namespace stopwright
