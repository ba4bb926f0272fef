// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/DrawingPen.h"

#include <functional>
#include <string>

namespace stopwright
{

/// The signs of a picture with their words, side by side from the left, on as many lines as it takes.
/// Threading: [control].
class PictureLegend
{
public:
    /// `area` is what is left of the picture; `letter` the em of the words.
    PictureLegend (DrawingPen& pen, const DrawingBox& area, double letter);

    /// A sign drawn in the box that it is given, so many usual signs wide, and its word.
    void add (const std::function<void (const DrawingBox&)>& sign, const std::string& word, double signs = 1.0);

    /// The sign of what the generators give: hatched, so that it is told without colour.
    void addSource (const std::string& word);

    /// A word without a sign, left out when it does not fit on the line.
    void note (const std::string& word);

    /// Ends the legend; the box below it.
    DrawingBox rest() const;

private:
    double rowHeight() const { return 1.55 * letter_; }

    void word (double x, const std::string& text);

    DrawingPen& pen_;
    DrawingBox area_;
    double letter_;
    double x_;
    double y_;
};

} // namespace stopwright
