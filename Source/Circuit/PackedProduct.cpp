// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/PackedProduct.h"

#include <cstddef>
#include <cstring>
#include <span>
#include <utility>

namespace stopwright
{

namespace
{

// Vectors of the compiler instead of plain loops: g++ 12 keeps the sums of a plain loop in memory and is three times
// slower. Two kernels by hand instead of STOPWRIGHT_WIDE, since each wants vectors of its own width.
using Pair = double __attribute__ ((vector_size (16)));
using Quad = double __attribute__ ((vector_size (32)));

constexpr int maximumQuads = 6;
using Index = std::ptrdiff_t;

/// What is multiplied: the panels one after the other, and the two parts of the vector.
struct Operands
{
    std::span<const int> panelQuads;
    const double* data;
    const double* first;
    Index firstColumns;
    const double* second;
    Index secondColumns;
};

/// The sums of sizeof... (lane) vectors of rows. Even and odd columns have sums of their own: one chain of
/// multiply-adds would wait for itself.
template <typename Vector, Index... lane>
struct Sums
{
    static constexpr Index width = sizeof (Vector) / sizeof (double);

    [[gnu::always_inline]] void
        sweep (const double* __restrict panel, Index height, const double* __restrict z, Index columns) noexcept
    {
        Vector rows {};
        for (Index column = 0; column + 1 < columns; column += 2)
        {
            const double left = z[column];
            const double right = z[column + 1];
            ((std::memcpy (&rows, panel + width * lane, sizeof rows), even[lane] += rows * left), ...);
            ((std::memcpy (&rows, panel + height + width * lane, sizeof rows), odd[lane] += rows * right), ...);
            panel += 2 * height;
        }
        if (columns % 2 == 0)
            return;
        const double last = z[columns - 1];
        ((std::memcpy (&rows, panel + width * lane, sizeof rows), even[lane] += rows * last), ...);
    }

    [[gnu::always_inline]] void store (double* __restrict y) const noexcept
    {
        Vector rows {};
        ((rows = even[lane] + odd[lane], std::memcpy (y + width * lane, &rows, sizeof rows)), ...);
    }

    Vector even[sizeof...(lane)] {};
    Vector odd[sizeof...(lane)] {};
};

/// Rows of a panel that is `height` rows high.
template <typename Vector, Index... lane>
[[gnu::always_inline]] inline void multiplyRows (std::integer_sequence<Index, lane...>,
                                                 const Operands& operands,
                                                 const double* panel,
                                                 Index height,
                                                 double* y) noexcept
{
    Sums<Vector, lane...> sums;
    sums.sweep (panel, height, operands.first, operands.firstColumns);
    panel += height * operands.firstColumns;
    sums.sweep (panel, height, operands.second, operands.secondColumns);
    sums.store (y);
}

template <Index quads>
[[gnu::always_inline]] inline void
    multiplyPanel (bool isWide, const Operands& operands, const double* panel, double* y) noexcept
{
    const auto lanes = std::make_integer_sequence<Index, quads>();
    if (isWide)
    {
        multiplyRows<Quad> (lanes, operands, panel, 4 * quads, y);
        return;
    }
    multiplyRows<Pair> (lanes, operands, panel, 4 * quads, y);
    multiplyRows<Pair> (lanes, operands, panel + 2 * quads, 4 * quads, y + 2 * quads);
}

[[gnu::always_inline]] inline void multiplyPanels (bool isWide, const Operands& operands, double* y) noexcept
{
    const double* panel = operands.data;
    for (const Index quads : operands.panelQuads)
    {
        switch (quads)
        {
            case 1:
                multiplyPanel<1> (isWide, operands, panel, y);
                break;
            case 2:
                multiplyPanel<2> (isWide, operands, panel, y);
                break;
            case 3:
                multiplyPanel<3> (isWide, operands, panel, y);
                break;
            case 4:
                multiplyPanel<4> (isWide, operands, panel, y);
                break;
            case 5:
                multiplyPanel<5> (isWide, operands, panel, y);
                break;
            default:
                multiplyPanel<maximumQuads> (isWide, operands, panel, y);
                break;
        }
        panel += 4 * quads * (operands.firstColumns + operands.secondColumns);
        y += 4 * quads;
    }
}

void multiplyNarrow (const Operands& operands, double* y) noexcept
{
    multiplyPanels (false, operands, y);
}

#if defined(__x86_64__)

__attribute__ ((target ("avx2,fma"))) void multiplyWide (const Operands& operands, double* y) noexcept
{
    multiplyPanels (true, operands, y);
}

const bool hasWideVectors = __builtin_cpu_supports ("avx2") != 0 && __builtin_cpu_supports ("fma") != 0;

#endif

} // namespace

PackedProduct::PackedProduct (int rows, int firstColumns, int secondColumns)
    : firstColumns_ (firstColumns),
      secondColumns_ (secondColumns),
      quadCount_ ((rows + 3) / 4)
{
    const int panelCount = (quadCount_ + maximumQuads - 1) / maximumQuads;
    std::size_t offset = 0;
    int quadsLeft = quadCount_;
    for (int panel = panelCount; panel > 0; --panel)
    {
        const int quads = (quadsLeft + panel - 1) / panel;
        quadsLeft -= quads;
        panelQuads_.push_back (quads);
        const auto height = 4 * static_cast<std::size_t> (quads);
        for (std::size_t row = 0; row < height; ++row)
            places_.push_back ({ offset + row, height });
        offset += height * static_cast<std::size_t> (firstColumns + secondColumns);
    }
    data_.assign (offset, 0.0);
}

void PackedProduct::multiply (const double* v, const double* z, double* y) const noexcept
{
    const Operands operands { panelQuads_, data_.data(), v, firstColumns_, z, secondColumns_ };
#if defined(__x86_64__)
    if (hasWideVectors)
    {
        multiplyWide (operands, y);
        return;
    }
#endif
    multiplyNarrow (operands, y);
}

} // namespace stopwright
