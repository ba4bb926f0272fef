// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/AlignedNumbers.h"

#include <cstddef>

namespace stopwright
{

/// A matrix by rows, each padded to a multiple of four numbers so that loops over a row run in whole vectors; the
/// padding is zero and stays so. Sized on [control]; reading, writing and filling on [audio].
class PaddedTable
{
public:
    PaddedTable() = default;
    PaddedTable (int rows, int columns);

    int rows() const noexcept { return rows_; }

    int columns() const noexcept { return columns_; }

    int stride() const noexcept { return stride_; }

    double* row (int index) noexcept { return data_.data() + static_cast<std::ptrdiff_t> (index) * stride_; }

    const double* row (int index) const noexcept
    {
        return data_.data() + static_cast<std::ptrdiff_t> (index) * stride_;
    }

    double* data() noexcept { return data_.data(); }

    void clear() noexcept;

private:
    int rows_ = 0;
    int columns_ = 0;
    int stride_ = 0;
    AlignedNumbers data_;
};

} // namespace stopwright
