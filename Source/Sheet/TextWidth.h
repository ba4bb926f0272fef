// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/Drawing.h"

#include <string_view>

namespace stopwright
{

/// How wide a line of UTF-8 text is in DejaVu Sans at an em of `size`, in the same unit: what a layout needs to keep
/// texts apart. Letters outside ASCII count as one em, so that the true width is never more. Threading: [any].
double textWidth (std::string_view text, double size, bool isBold);

/// The box that a text fills: from 0.8 of an em above its base line to 0.25 below.
DrawingBox textBox (const DrawnText& text);

} // namespace stopwright
