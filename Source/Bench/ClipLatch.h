// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace stopwright
{

/// Which stages of an instrument have clipped since their lamp was last put out. Threading: [control].
class ClipLatch
{
public:
    /// `names` are what the bits stand for, as Engine::clipNames; every lamp is out.
    void watch (std::vector<std::string> names);

    /// Lights what is set in `clips`. True when that lit a lamp that was out.
    bool take (std::uint64_t clips);

    void putOut (int stage);
    void putAllOut();

    int stageCount() const noexcept { return static_cast<int> (names_.size()); }

    bool isLit (int stage) const noexcept;
    int litCount() const noexcept;

    /// "preamp: stage"
    const std::string& name (int stage) const { return names_[static_cast<std::size_t> (stage)]; }

private:
    std::vector<std::string> names_;
    std::uint64_t lit_ = 0;
};

} // namespace stopwright
