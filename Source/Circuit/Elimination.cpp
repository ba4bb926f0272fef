// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/Elimination.h"

#include "Units/WideVector.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

/// A pivot this small beside its row's first entries is the rounding of a sum that cancelled.
constexpr double leastPivot = 1e-15;

struct Work
{
    double* data = nullptr;
    int stride = 0;
    int rows = 0;
    bool isComplete = false;
    Elimination task {};
    double* scales = nullptr;

    double* row (int index) const noexcept { return data + static_cast<std::ptrdiff_t> (index) * stride; }
};

[[gnu::always_inline]] inline void findScales (const Work& work) noexcept
{
    for (int k = 0; k < work.task.count; ++k)
    {
        const double* row = work.row (work.task.firstRow + k) + work.task.firstColumn;
        double largest = 0.0;
        for (int column = 0; column < work.task.count; ++column)
            largest = std::max (largest, std::abs (row[column]));
        work.scales[k] = largest > 0.0 ? 1.0 / largest : 0.0;
    }
}

/// Brings the best pivot for step k to its row. Returns false when there is none.
[[gnu::always_inline]] inline bool placePivot (const Work& work, int k) noexcept
{
    const int column = work.task.firstColumn + k;
    int best = k;
    double most = -1.0;
    for (int candidate = k; candidate < work.task.count; ++candidate)
    {
        const double size = std::abs (work.row (work.task.firstRow + candidate)[column]) * work.scales[candidate];
        if (size > most)
        {
            most = size;
            best = candidate;
        }
    }
    if (! (most > leastPivot) || ! std::isfinite (most))
        return false;
    if (best != k)
    {
        std::swap (work.scales[best], work.scales[k]);
        double* a = work.row (work.task.firstRow + best);
        double* b = work.row (work.task.firstRow + k);
        for (int j = 0; j < work.stride; ++j)
            std::swap (a[j], b[j]);
    }
    return true;
}

[[gnu::always_inline]] inline void clearColumn (const Work& work, int k) noexcept
{
    const int pivotRow = work.task.firstRow + k;
    const int column = work.task.firstColumn + k;
    const int start = column & ~3;
    double* __restrict pivot = work.row (pivotRow) + start;
    const int length = work.stride - start;
    const double inverse = 1.0 / pivot[column - start];
    if (work.isComplete)
        for (int j = 0; j < length; ++j)
            pivot[j] *= inverse;
    const double unit = work.isComplete ? 1.0 : inverse;

    for (int index = work.isComplete ? work.task.firstRow : pivotRow + 1; index < work.rows; ++index)
    {
        double* __restrict row = work.row (index) + start;
        const double factor = row[column - start] * unit;
        if (factor == 0.0 || index == pivotRow)
            continue;
        for (int j = 0; j < length; ++j)
            row[j] -= factor * pivot[j];
    }
}

STOPWRIGHT_WIDE bool run (const Work& work) noexcept
{
    findScales (work);
    for (int k = 0; k < work.task.count; ++k)
    {
        if (! placePivot (work, k))
            return false;
        clearColumn (work, k);
    }
    return true;
}

} // namespace

bool Elimination::forward (PaddedTable& table, std::span<double> scales) const noexcept
{
    return run ({ table.data(), table.stride(), table.rows(), false, *this, scales.data() });
}

bool Elimination::complete (PaddedTable& table, std::span<double> scales) const noexcept
{
    return run ({ table.data(), table.stride(), table.rows(), true, *this, scales.data() });
}

} // namespace stopwright
