// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/SlidingMinimum.h"

#include <bit>

namespace stopwright
{

SlidingMinimum::SlidingMinimum (std::size_t length)
    : length_ (length),
      mask_ (std::bit_ceil (length + 1) - 1),
      entries_ (std::bit_ceil (length + 1))
{}

double SlidingMinimum::push (double value) noexcept
{
    while (end_ != first_ && entry (end_ - 1).value >= value)
        --end_;
    entry (end_++) = { value, time_ };
    if (entry (first_).time + length_ <= time_)
        ++first_;
    ++time_;
    return entry (first_).value;
}

void SlidingMinimum::reset() noexcept
{
    time_ = first_ = end_ = 0;
}

} // namespace stopwright
