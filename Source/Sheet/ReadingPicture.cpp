// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/ReadingPicture.h"

#include "Sheet/DrawingPen.h"

namespace stopwright
{

DrawingBox beginPicture (ReadingPicture& picture, const ReadingFormat& format)
{
    constexpr double lineHeight = 1.5;
    constexpr double baseLine = 1.1;
    picture.drawing.width = format.width;
    picture.drawing.height = format.height;
    DrawingPen pen (picture.drawing);
    double y = 0.0;
    for (const auto& line : format.heading)
    {
        const bool isBold = y == 0.0;
        pen.text ({ 0.0, y + baseLine * format.letter }, fittedText (line, format.letter, isBold, format.width),
                  format.letter, Ink::ink, TextAlign::left, isBold);
        y += lineHeight * format.letter;
    }
    return { 0.0, y, format.width, format.height - y };
}

std::optional<std::size_t> spotAt (const ReadingPicture& picture, DrawingPoint place) noexcept
{
    std::optional<std::size_t> found;
    double smallest = 0.0;
    for (std::size_t index = 0; index < picture.spots.size(); ++index)
    {
        const auto& box = picture.spots[index].box;
        const double size = box.width * box.height;
        const bool isInside = place.x >= box.x && place.x < box.right() && place.y >= box.y && place.y < box.bottom();
        if (! isInside || (found && size >= smallest))
            continue;
        found = index;
        smallest = size;
    }
    return found;
}

} // namespace stopwright
