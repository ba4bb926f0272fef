// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/Drawing.h"
#include "Sheet/InkColours.h"

#include <string>

namespace stopwright
{

/// A drawing as a whole SVG document, UTF-8, one unit = 1 point, on a ground of the sheet's colour. Texts stay texts, in
/// DejaVu Sans where the reader of the file has it; control characters in them become "?".
/// Threading: [control]. Source: W3C, Scalable Vector Graphics 1.1 (second edition), 2011.
std::string svgText (const Drawing& drawing, const InkColours& inks = InkColours::print());

} // namespace stopwright
