// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/PaddedTable.h"

#include <algorithm>

namespace stopwright
{

PaddedTable::PaddedTable (int rows, int columns)
    : rows_ (rows),
      columns_ (columns),
      stride_ ((columns + 3) & ~3),
      data_ (static_cast<std::size_t> (rows) * static_cast<std::size_t> (stride_), 0.0)
{}

void PaddedTable::clear() noexcept
{
    std::fill (data_.begin(), data_.end(), 0.0);
}

} // namespace stopwright
