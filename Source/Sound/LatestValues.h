// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <atomic>
#include <cstddef>
#include <optional>
#include <vector>

namespace stopwright
{

/// One letter box per knob, each holding the latest value put in and whether it was taken: a fast drag overwrites itself
/// and its last value always arrives, however late the reader looks.
/// Threading: construct on [control]; put on one thread at a time, take on [audio]; neither ever waits.
class LatestValues
{
public:
    explicit LatestValues (std::size_t count) : boxes_ (count) {}

    std::size_t size() const noexcept { return boxes_.size(); }

    void put (std::size_t index, double value) noexcept;

    /// Whether there is anything to take; asking takes the flag down, so take them all after.
    bool takeNotice() noexcept;

    /// The value, when it came since the last take.
    std::optional<double> take (std::size_t index) noexcept;

    /// The last value put in, taken or not. Threading: the thread that puts.
    std::optional<double> lastPut (std::size_t index) const noexcept;

private:
    struct Box
    {
        std::atomic<double> value { 0.0 };
        std::atomic<bool> isFresh { false };
        bool wasUsed = false; ///< of the putting thread alone
    };

    std::vector<Box> boxes_;
    std::atomic<bool> notice_ { false };
};

} // namespace stopwright
