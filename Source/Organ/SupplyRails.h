// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// How far a stage's output can swing, in volts re its resting point; low < 0 < high.
struct SupplyRails
{
    double low = -6.0;
    double high = 6.0;

    bool operator== (const SupplyRails&) const = default;
};

} // namespace stopwright
