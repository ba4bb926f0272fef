// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <chrono>

namespace stopwright
{

/// The clock is read without entering the kernel on the systems this is meant for.
inline double secondsSince (std::chrono::steady_clock::time_point start) noexcept
{
    return std::chrono::duration<double> (std::chrono::steady_clock::now() - start).count();
}

} // namespace stopwright
