// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/Drawing.h"
#include "Units/LevelUnit.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// A place in a picture that has numbers to tell.
struct ReadingSpot
{
    DrawingBox box;                   ///< where the pointer gets them
    std::string sentence;             ///< UTF-8
    std::optional<DrawingPoint> mark; ///< the point it is about; without one it is about the whole box
};

/// What the picture of a reading is made for. Lengths in points.
struct ReadingFormat
{
    double width = 460.0;
    double height = 300.0;
    double letter = 10.5;                 ///< em of its texts
    LevelUnit unit = LevelUnit::voltsRms; ///< of the volts in its sentences
    std::vector<std::string> heading {};  ///< lines over the picture, the first in bold; a window has its own
};

/// The picture of a reading. Spots are listed column by column from the left, `columnLength` in each, from the top.
struct ReadingPicture
{
    Drawing drawing;
    std::vector<ReadingSpot> spots;
    std::size_t columnLength = 1;
    std::string sentence; ///< what to tell while no spot is chosen
};

/// A picture of that size with its heading and nothing else yet, and the box that is left for the rest.
/// Threading: [control].
DrawingBox beginPicture (ReadingPicture& picture, const ReadingFormat& format);

/// The spot at a place, the smallest where several lie; none outside all. Threading: [any].
std::optional<std::size_t> spotAt (const ReadingPicture& picture, DrawingPoint place) noexcept;

} // namespace stopwright
