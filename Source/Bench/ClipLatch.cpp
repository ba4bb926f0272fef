// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ClipLatch.h"

#include <algorithm>
#include <bit>
#include <utility>

namespace stopwright
{

namespace
{

constexpr std::size_t bitCount = 64;

std::uint64_t bitOf (int stage) noexcept
{
    return stage >= 0 && stage < static_cast<int> (bitCount) ? std::uint64_t { 1 } << static_cast<unsigned> (stage) : 0;
}

} // namespace

void ClipLatch::watch (std::vector<std::string> names)
{
    names_ = std::move (names);
    names_.resize (std::min (names_.size(), bitCount));
    lit_ = 0;
}

bool ClipLatch::take (std::uint64_t clips)
{
    const auto known = names_.size() >= bitCount ? ~std::uint64_t { 0 } : bitOf (stageCount()) - 1;
    const auto before = std::exchange (lit_, lit_ | (clips & known));
    return lit_ != before;
}

void ClipLatch::putOut (int stage)
{
    lit_ &= ~bitOf (stage);
}

void ClipLatch::putAllOut()
{
    lit_ = 0;
}

bool ClipLatch::isLit (int stage) const noexcept
{
    return (lit_ & bitOf (stage)) != 0;
}

int ClipLatch::litCount() const noexcept
{
    return std::popcount (lit_);
}

} // namespace stopwright
