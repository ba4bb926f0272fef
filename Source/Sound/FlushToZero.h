// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>

namespace stopwright
{

/// While it lives, its thread counts numbers too small for a full mantissa as zero: a network that rings out would
/// otherwise run on them at a fraction of its speed. Puts the thread back as it was. No effect on processors other than
/// x86-64 and 64-bit ARM. Threading: [audio]
class FlushToZero
{
public:
    FlushToZero() noexcept;
    ~FlushToZero();
    FlushToZero (const FlushToZero&) = delete;
    FlushToZero& operator= (const FlushToZero&) = delete;
    FlushToZero (FlushToZero&&) = delete;
    FlushToZero& operator= (FlushToZero&&) = delete;

private:
    std::uint64_t before_;
};

} // namespace stopwright
