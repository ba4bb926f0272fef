// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/PlotAxis.h"

#include "Sheet/ReadingWords.h"
#include "Sheet/TextWidth.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace stopwright
{

namespace
{

/// From the base line of digits to their middle, in ems.
constexpr double middleOfDigits = 0.36;

constexpr double gapBetweenLabels = 0.6;

} // namespace

double PlotAxis::at (double value) const noexcept
{
    const double lowest = std::min (first, last);
    const double within = std::isnan (value) ? lowest : std::clamp (value, lowest, std::max (first, last));
    const double place =
        isLogarithmic ? std::log (within / first) / std::log (last / first) : (within - first) / (last - first);
    return from + place * (to - from);
}

double PlotAxis::beyond (double value) const noexcept
{
    constexpr double farthest = 100.0;
    const double lowest = first <= last ? -farthest : farthest;
    const double place = (value - first) / (last - first);
    return from + (std::isnan (place) ? lowest : std::clamp (place, -farthest, farthest)) * (to - from);
}

bool PlotAxis::contains (double value) const noexcept
{
    return value >= std::min (first, last) && value <= std::max (first, last);
}

std::vector<AxisMark> decibelMarks (const PlotAxis& axis, double letter, const std::string& unit)
{
    constexpr double leastLabelRoom = 1.5; // ems
    const double pointsPerDb = std::abs ((axis.to - axis.from) / (axis.last - axis.first));
    constexpr double fewDb = 30.0;
    const double lowest = std::min (axis.first, axis.last);
    const double highest = std::max (axis.first, axis.last);
    double step = 60.0;
    for (const double candidate : { 40.0, 20.0, 10.0, 5.0 })
        if (candidate * pointsPerDb >= leastLabelRoom * letter && (candidate >= 10.0 || highest - lowest <= fewDb))
            step = candidate;
    std::vector<AxisMark> marks;
    for (double level = std::floor (highest / step) * step; level >= lowest; level -= step)
        marks.push_back ({ level, signedText (level, 0) + (marks.empty() ? " " + unit : "") });
    return marks;
}

std::vector<AxisMark> hertzMarks (const PlotAxis& axis)
{
    constexpr std::array hertz { 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000 };
    constexpr int kilo = 1000;
    std::vector<AxisMark> marks;
    for (const int value : hertz)
        if (value >= axis.first && value <= axis.last)
            marks.push_back ({ static_cast<double> (value),
                               value >= kilo ? std::to_string (value / kilo).append ("k") : std::to_string (value) });
    return marks;
}

void ruleAcross (DrawingPen& pen,
                 const DrawingBox& plot,
                 const PlotAxis& axis,
                 const std::vector<AxisMark>& marks,
                 double letter)
{
    for (const auto& mark : marks)
    {
        const double y = axis.at (mark.value);
        pen.rule ({ plot.x, y }, { plot.right(), y });
        if (! mark.label.empty())
            pen.text ({ plot.x - 0.4 * letter, y + middleOfDigits * letter }, mark.label, letter, Ink::faintInk,
                      TextAlign::right);
    }
}

void ruleUp (DrawingPen& pen,
             const DrawingBox& plot,
             const PlotAxis& axis,
             const std::vector<AxisMark>& marks,
             double letter,
             double labelY)
{
    double lastRight = -1e9;
    for (const auto& mark : marks)
    {
        const double x = axis.at (mark.value);
        pen.rule ({ x, plot.y }, { x, plot.bottom() });
        const double width = textWidth (mark.label, letter, false);
        const double left = std::max (0.0, std::min (x - 0.5 * width, plot.right() + 0.5 * letter - width));
        if (mark.label.empty() || left < lastRight + gapBetweenLabels * letter)
            continue;
        lastRight = left + width;
        pen.text ({ left, labelY }, mark.label, letter, Ink::faintInk);
    }
}

} // namespace stopwright
