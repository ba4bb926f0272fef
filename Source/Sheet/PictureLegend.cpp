// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/PictureLegend.h"

#include "Sheet/TextWidth.h"

namespace stopwright
{

namespace
{

// In ems.
constexpr double signWidth = 1.2;
constexpr double signHeight = 0.85;
constexpr double afterSign = 0.35;
constexpr double afterWord = 1.1;
constexpr double baseLine = 1.05;

} // namespace

PictureLegend::PictureLegend (DrawingPen& pen, const DrawingBox& area, double letter)
    : pen_ (pen),
      area_ (area),
      letter_ (letter),
      x_ (area.x),
      y_ (area.y)
{}

void PictureLegend::word (double x, const std::string& text)
{
    pen_.text ({ x, y_ + baseLine * letter_ }, text, letter_, Ink::ink);
    x_ = x + textWidth (text, letter_, false) + afterWord * letter_;
}

void PictureLegend::add (const std::function<void (const DrawingBox&)>& sign, const std::string& word, double signs)
{
    const double width = signs * signWidth * letter_;
    const double wordX = width + afterSign * letter_;
    if (x_ > area_.x && x_ + wordX + textWidth (word, letter_, false) > area_.right())
    {
        x_ = area_.x;
        y_ += rowHeight();
    }
    sign ({ x_, y_ + (baseLine - signHeight + 0.05) * letter_, width, signHeight * letter_ });
    this->word (x_ + wordX, fittedText (word, letter_, false, area_.right() - x_ - wordX));
}

void PictureLegend::addSource (const std::string& word)
{
    add (
        [this] (const DrawingBox& box)
        {
            pen_.fill (box, Ink::source, DrawingPen::sourceStrength);
            pen_.hatch (box, Ink::source);
        },
        word);
}

void PictureLegend::note (const std::string& word)
{
    if (x_ + textWidth (word, letter_, false) <= area_.right())
        this->word (x_, word);
}

DrawingBox PictureLegend::rest() const
{
    const double y = y_ + rowHeight();
    return { area_.x, y, area_.width, area_.bottom() - y };
}

} // namespace stopwright
