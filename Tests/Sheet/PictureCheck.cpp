// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/PictureCheck.h"

#include "Sheet/TextWidth.h"

#include <algorithm>

namespace stopwright::test
{

namespace
{

constexpr double rounding = 0.5;

bool isWithin (const DrawingBox& box, const Drawing& drawing)
{
    return box.x >= -rounding && box.y >= -rounding && box.right() <= drawing.width + rounding
           && box.bottom() <= drawing.height + rounding;
}

/// The letters themselves: the box that the writer reserves has the room between lines in it.
DrawingBox inked (const DrawnText& text)
{
    auto box = textBox (text);
    box.y += 0.06 * text.size;
    box.height -= 0.1 * text.size;
    return box;
}

} // namespace

std::string pictureFault (const ReadingPicture& picture)
{
    const auto& texts = picture.drawing.texts;
    for (std::size_t first = 0; first < texts.size(); ++first)
    {
        if (! isWithin (inked (texts[first]), picture.drawing))
            return "beyond the edge: " + texts[first].text;
        for (std::size_t second = first + 1; second < texts.size(); ++second)
            if (inked (texts[first]).meets (inked (texts[second])))
                return texts[first].text + " over " + texts[second].text;
    }
    for (const auto& spot : picture.spots)
        if (! isWithin (spot.box, picture.drawing) || spot.sentence.empty() || spot.box.width <= 0.0
            || spot.box.height <= 0.0)
            return "spot: " + spot.sentence;
    return {};
}

std::vector<DrawingBox> boxesOf (const Drawing& drawing, Ink ink, bool isHatched)
{
    std::vector<DrawingBox> boxes;
    for (const auto& area : drawing.areas)
        if (area.ink == ink && area.isHatched == isHatched && area.points.size() == 4)
            boxes.push_back ({ area.points[0].x, area.points[0].y, area.points[2].x - area.points[0].x,
                               area.points[2].y - area.points[0].y });
    return boxes;
}

bool hasText (const Drawing& drawing, const std::string& part)
{
    return std::ranges::any_of (drawing.texts,
                                [&] (const DrawnText& text) { return text.text.find (part) != std::string::npos; });
}

std::vector<ReadingFormat> someFormats()
{
    return { { 299.0, 140.0, 10.7, LevelUnit::voltsRms, {} },
             { 299.0, 160.0, 10.7, LevelUnit::dbu, {} },
             { 450.0, 330.0, 10.7, LevelUnit::dbv, {} },
             { 620.0, 480.0, 16.0, LevelUnit::voltsPeakToPeak, {} },
             { 640.0, 440.0, 11.0, LevelUnit::voltsRms, { "Krummhorn 8", "A reading", "Of a key" } } };
}

} // namespace stopwright::test
