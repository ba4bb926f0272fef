// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/DrawingPen.h"

#include <string>
#include <vector>

namespace stopwright
{

/// One direction of a plot: which values lie between which places. Linear, or logarithmic with positive values.
struct PlotAxis
{
    double first = 0.0; ///< value at `from`
    double last = 1.0;  ///< value at `to`
    double from = 0.0;
    double to = 1.0;
    bool isLogarithmic = false;

    /// The place of a value, no further out than the ends; minus infinity is at the end of the small values.
    double at (double value) const noexcept;

    /// The place of a value also outside the ends, on an axis that is not logarithmic; infinite ones a hundred of its
    /// lengths away.
    double beyond (double value) const noexcept;

    bool contains (double value) const noexcept;
};

/// A value that has a line across the plot and a label beside it.
struct AxisMark
{
    double value = 0.0;
    std::string label; ///< empty for a line alone
};

/// "0 dB", "-20", ...: every 5 (of few), 10, 20 .. dB between two levels as there is room for
/// labels of that size. `unit` stands
/// beside the highest. Threading: [control].
std::vector<AxisMark> decibelMarks (const PlotAxis& axis, double letter, const std::string& unit);

/// 20, 50, 100 .. 20k within the axis. Threading: [control].
std::vector<AxisMark> hertzMarks (const PlotAxis& axis);

/// Lines across `plot` at the marks of an upward axis, labels left of it.
void ruleAcross (DrawingPen& pen,
                 const DrawingBox& plot,
                 const PlotAxis& axis,
                 const std::vector<AxisMark>& marks,
                 double letter);

/// Lines up `plot` at the marks of a rightward axis, labels on the base line `labelY`, none left of 0; those too
/// near to the one before are left out.
void ruleUp (DrawingPen& pen,
             const DrawingBox& plot,
             const PlotAxis& axis,
             const std::vector<AxisMark>& marks,
             double letter,
             double labelY);

} // namespace stopwright
