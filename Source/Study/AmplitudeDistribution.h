// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace stopwright
{

/// What share of the time a voltage spends where, on a grid of equal cells about 0 V.
///
/// Waves of different pitch classes meet in every phase in time (or begin in any, where their divisors happen to stand in
/// a whole-number ratio), so that the distribution of their sum is the convolution of theirs. A cell is a fifteen
/// thousandth of the sum of all peaks; rounding leaves about 1e-15 in each, so shares below 1e-12 mean nothing.
/// Threading: construct on [control]; the rest on [any].
class AmplitudeDistribution
{
public:
    /// Of the sum of independent waves, each given as one period in equal steps of time. No wave at all is 0 V for ever.
    explicit AmplitudeDistribution (std::span<const std::vector<double>> waves);

    /// The sum of the waves' highest and lowest points: what cannot be passed however long it lasts.
    double highest() const noexcept { return highest_; }

    double lowest() const noexcept { return lowest_; }

    double cellVolts() const noexcept { return cellVolts_; }

    /// Share of time, 0 .. 1, that the voltage is above (below) so many volts.
    double shareAbove (double volts) const noexcept;
    double shareBelow (double volts) const noexcept;

    /// The least factor on the limits, low < 0 < high, that lets the voltage be beyond them for no more than `share` of
    /// the time; limits may be infinite. A fourth of it is 12 dB of room. 0 when both are infinite.
    double useOf (double low, double high, double share) const noexcept;

    double rms() const noexcept;
    double meanMagnitude() const noexcept;

private:
    double voltsOf (std::size_t cell) const noexcept;
    double sharePast (double cells) const noexcept;

    double highest_ = 0.0;
    double lowest_ = 0.0;
    double cellVolts_ = 1.0;
    std::vector<double> shares_;
    std::vector<double> past_; ///< [cell] share in this cell and all above
};

} // namespace stopwright
