// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/FractionalKernel.h"

#include "Sound/KaiserLowpass.h"
#include "Units/WideVector.h"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace stopwright
{

namespace
{

constexpr double highestHeardHz = 20000.0;
constexpr double highestPartOfRate = 0.4535; // 20 kHz at 44.1 kHz
constexpr double attenuationDb = 96.0;
constexpr int places = 256;
constexpr std::size_t lanes = 8;

STOPWRIGHT_WIDE
double weigh (const double* weights, const double* next, double share, const double* in, std::size_t taps) noexcept
{
    std::array<double, lanes> sums {};
    for (std::size_t k = 0; k < taps; k += lanes)
        for (std::size_t lane = 0; lane < lanes; ++lane)
        {
            const double weight = weights[k + lane] + share * (next[k + lane] - weights[k + lane]);
            sums[lane] += weight * in[k + lane];
        }
    return ((sums[0] + sums[4]) + (sums[2] + sums[6])) + ((sums[1] + sums[5]) + (sums[3] + sums[7]));
}

} // namespace

FractionalKernel::FractionalKernel (double rateHz)
{
    const double passHz = std::min (highestHeardHz, highestPartOfRate * rateHz);
    const auto prototype = kaiserLowpass ({ .passEdge = passHz / rateHz / places,
                                            .stopEdge = (rateHz - passHz) / rateHz / places,
                                            .attenuationDb = attenuationDb,
                                            .halfLengthMultiple = places * static_cast<int> (lanes) / 2 });
    const int half = static_cast<int> (prototype.size()) / 2;
    reach_ = half / places;
    taps_ = 2 * static_cast<std::size_t> (reach_);
    weights_.assign ((places + 1) * taps_, 0.0);
    for (int place = 0; place <= places; ++place)
    {
        double* const row = weights_.data() + static_cast<std::size_t> (place) * taps_;
        double sum = 0.0;
        for (int tap = 0; tap < 2 * reach_; ++tap)
        {
            const int distance = places * (reach_ - tap) - place;
            const int index = half + distance;
            row[tap] = std::abs (distance) > half ? 0.0 : prototype[static_cast<std::size_t> (index)];
            sum += row[tap];
        }
        for (std::size_t tap = 0; tap < taps_; ++tap)
            row[tap] /= sum;
    }
}

double FractionalKernel::read (const double* window, double fraction) const noexcept
{
    const double place = fraction * places;
    const auto row = std::min (static_cast<std::size_t> (place), static_cast<std::size_t> (places - 1));
    const double* const weights = weights_.data() + row * taps_;
    return weigh (weights, weights + taps_, place - static_cast<double> (row), window, taps_);
}

} // namespace stopwright
