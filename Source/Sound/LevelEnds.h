// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// 0 .. 1 with level ends, so that a fade has no corner of its own: 3 p^2 - 2 p^3 of its place p. Threading: [any].
constexpr double withLevelEnds (double place) noexcept
{
    return place * place * (3.0 - 2.0 * place);
}

} // namespace stopwright
