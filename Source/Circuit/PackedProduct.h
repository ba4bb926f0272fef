// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/AlignedNumbers.h"

#include <cstddef>
#include <vector>

namespace stopwright
{

/// A small matrix [M N] stored for one purpose: y = M v + N z as fast as the processor goes.
///
/// Rows are padded to a multiple of four and cut into panels of at most 24, each stored column by column, so that a
/// panel's sums stay in registers while the columns are swept. z comes last: what is carried from one product to the
/// next is then waited for as late as can be.
/// Threading: construct on [control], set and multiply on [audio].
class PackedProduct
{
public:
    PackedProduct() = default;
    PackedProduct (int rows, int firstColumns, int secondColumns);

    /// Length that y must have; what is beyond the rows is written with zeros.
    int outputSize() const noexcept { return 4 * quadCount_; }

    /// `column` counts through M and N.
    void set (int row, int column, double value) noexcept
    {
        const auto& place = places_[static_cast<std::size_t> (row)];
        data_[place.offset + static_cast<std::size_t> (column) * place.height] = value;
    }

    /// Writes y, which must not overlap v or z. Threading: [audio] no allocation, no lock.
    void multiply (const double* v, const double* z, double* y) const noexcept;

private:
    struct Place
    {
        std::size_t offset = 0;
        std::size_t height = 0;
    };

    int firstColumns_ = 0;
    int secondColumns_ = 0;
    int quadCount_ = 0;
    std::vector<int> panelQuads_;
    std::vector<Place> places_;
    AlignedNumbers data_;
};

} // namespace stopwright
