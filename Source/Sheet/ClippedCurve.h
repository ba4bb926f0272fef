// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/Drawing.h"

#include <vector>

namespace stopwright
{

/// What of a line lies between two heights: its pieces, each ended where it crosses one of them. `top` is the smaller.
/// Empty when all of it lies above or below. All coordinates are finite. Threading: [any]. Source: closed form, two
/// straight lines.
std::vector<std::vector<DrawingPoint>>
    clippedCurve (const std::vector<DrawingPoint>& points, double top, double bottom);

} // namespace stopwright
