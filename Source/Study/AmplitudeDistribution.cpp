// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/AmplitudeDistribution.h"

#include "Study/FourierTransform.h"

#include <algorithm>
#include <cmath>
#include <complex>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

constexpr std::size_t cellCount = std::size_t { 1 } << 15;
constexpr double middle = 0.5 * static_cast<double> (cellCount);

/// Each point in time goes to the two cells about it, the nearer one getting more: the mean stays exact. 0 V is cell 0,
/// negative volts come from the end down, as a transform has it.
std::vector<Complex> sharesOf (const std::vector<double>& wave, double cellVolts)
{
    std::vector<Complex> shares (cellCount);
    const double each = 1.0 / static_cast<double> (wave.size());
    for (const double volts : wave)
    {
        const double place = volts / cellVolts;
        const double lower = std::floor (place);
        const auto cell = static_cast<std::size_t> (static_cast<long> (lower) + static_cast<long> (cellCount));
        shares[cell % cellCount] += each * (1.0 - (place - lower));
        shares[(cell + 1) % cellCount] += each * (place - lower);
    }
    return shares;
}

} // namespace

AmplitudeDistribution::AmplitudeDistribution (std::span<const std::vector<double>> waves)
    : shares_ (cellCount),
      past_ (cellCount + 1)
{
    double span = 0.0;
    for (const auto& wave : waves)
    {
        const auto [least, most] = std::ranges::minmax (wave);
        lowest_ += least;
        highest_ += most;
        span += std::max (std::abs (least), std::abs (most));
    }
    constexpr double room = 1.05; // the two cells beside the outermost, and sums of rounding
    if (span > 0.0)
        cellVolts_ = room * span / middle;

    const FourierTransform transform (cellCount);
    std::vector<Complex> product (cellCount, 1.0);
    for (const auto& wave : waves)
    {
        auto shares = sharesOf (wave, cellVolts_);
        transform.forward (shares);
        for (std::size_t k = 0; k < cellCount; ++k)
            product[k] *= shares[k];
    }
    transform.backward (product);
    for (std::size_t cell = 0; cell < cellCount; ++cell)
        shares_[cell] =
            std::max (0.0, product[(cell + cellCount / 2) % cellCount].real() / static_cast<double> (cellCount));
    for (std::size_t cell = cellCount; cell-- > 0;)
        past_[cell] = past_[cell + 1] + shares_[cell];
}

double AmplitudeDistribution::voltsOf (std::size_t cell) const noexcept
{
    return (static_cast<double> (cell) - middle) * cellVolts_;
}

/// Share above a place counted in cells; that of a cell lies evenly about its middle.
double AmplitudeDistribution::sharePast (double cells) const noexcept
{
    const double place = cells + 0.5;
    if (! (place > 0.0))
        return past_.front();
    if (place >= static_cast<double> (cellCount))
        return 0.0;
    const auto cell = static_cast<std::size_t> (place);
    return past_[cell + 1] + (static_cast<double> (cell + 1) - place) * shares_[cell];
}

double AmplitudeDistribution::shareAbove (double volts) const noexcept
{
    return sharePast (volts / cellVolts_ + middle);
}

double AmplitudeDistribution::shareBelow (double volts) const noexcept
{
    double sum = 0.0;
    const double place = volts / cellVolts_ + middle + 0.5;
    for (std::size_t cell = 0; cell < cellCount && static_cast<double> (cell) < place; ++cell)
        sum += std::min (1.0, place - static_cast<double> (cell)) * shares_[cell];
    return sum;
}

double AmplitudeDistribution::useOf (double low, double high, double share) const noexcept
{
    double least = 0.0;
    double most = std::max (lowest_ / low, highest_ / high);
    constexpr int halvings = 50;
    for (int halving = 0; halving < halvings; ++halving)
    {
        const double use = 0.5 * (least + most);
        const double beyond = (std::isfinite (high) ? shareAbove (use * high) : 0.0)
                              + (std::isfinite (low) ? shareBelow (use * low) : 0.0);
        (beyond > share ? least : most) = use;
    }
    return most;
}

double AmplitudeDistribution::rms() const noexcept
{
    double power = 0.0;
    for (std::size_t cell = 0; cell < cellCount; ++cell)
        power += shares_[cell] * voltsOf (cell) * voltsOf (cell);
    return std::sqrt (power);
}

double AmplitudeDistribution::meanMagnitude() const noexcept
{
    double sum = 0.0;
    for (std::size_t cell = 0; cell < cellCount; ++cell)
        sum += shares_[cell] * std::abs (voltsOf (cell));
    return sum;
}

} // namespace stopwright
