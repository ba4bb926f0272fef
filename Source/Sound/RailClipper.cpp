// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/RailClipper.h"

#include "Units/WideVector.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr auto points = static_cast<std::size_t> (RailKernel::points);
constexpr double largestOverdrive = 1e6;
constexpr double roundingMargin = 0.999;

/// `groups` times eight outputs: each is a sum of its own, so that the eight can run side by side.
STOPWRIGHT_WIDE
void weighAll (const double* weights, std::size_t count, const double* in, double* out, std::size_t groups) noexcept
{
    constexpr std::size_t lanes = 8;
    for (std::size_t group = 0; group < groups; ++group, in += lanes, out += lanes)
    {
        std::array<double, lanes> sums {};
        for (std::size_t k = 0; k < count; ++k)
            for (std::size_t lane = 0; lane < lanes; ++lane)
                sums[lane] += weights[k] * in[k + lane];
        for (std::size_t lane = 0; lane < lanes; ++lane)
            out[lane] = sums[lane];
    }
}

/// The points of one row.
STOPWRIGHT_WIDE
void findPoints (const double* weights, std::size_t count, const double* in, double* out) noexcept
{
    std::array<double, points> even {};
    std::array<double, points> odd {};
    for (std::size_t k = 0; k < count; k += 2, weights += 2 * points)
        for (std::size_t lane = 0; lane < points; ++lane)
        {
            even[lane] += weights[lane] * in[k];
            odd[lane] += weights[points + lane] * in[k + 1];
        }
    for (std::size_t lane = 0; lane < points; ++lane)
        out[lane] = even[lane] + odd[lane];
}

/// Mean of max (0, v) along a straight line from a to b.
inline double meanAboveZero (double a, double b) noexcept
{
    const double upper = std::max (a, b);
    const double lower = std::min (a, b);
    const double crossing = 0.5 * upper * upper / (upper - lower);
    const double above = lower >= 0.0 ? 0.5 * (upper + lower) : crossing;
    return upper <= 0.0 ? 0.0 : above;
}

/// ends[j] and ends[j + 1] are the ends of length j.
STOPWRIGHT_WIDE
void findExcess (const double* ends, double low, double high, double* excess) noexcept
{
    for (std::size_t j = 0; j < points; ++j)
        excess[j] =
            meanAboveZero (ends[j] - high, ends[j + 1] - high) - meanAboveZero (low - ends[j], low - ends[j + 1]);
}

STOPWRIGHT_WIDE
double weighRows (const double* weights, const double* in, std::size_t count) noexcept
{
    std::array<double, points> even {};
    std::array<double, points> odd {};
    for (std::size_t k = 0; k < count; k += 2 * points)
        for (std::size_t lane = 0; lane < points; ++lane)
        {
            even[lane] += weights[k + lane] * in[k + lane];
            odd[lane] += weights[k + points + lane] * in[k + points + lane];
        }
    double sum = 0.0;
    for (std::size_t lane = 0; lane < points; ++lane)
        sum += even[lane] + odd[lane];
    return sum;
}

} // namespace

RailClipper::RailClipper (SupplyRails rails, double rateHz)
    : kernel_ (makeRailKernel (rateHz)),
      rails_ (rails),
      largest_ (largestOverdrive * std::min (-rails.low, rails.high)),
      harmless_ (roundingMargin * std::min (-rails.low, rails.high) / kernel_.largestGain),
      history_ (4 * static_cast<std::size_t> (kernel_.reach)),
      rowsKept_ (2 * static_cast<std::size_t> (kernel_.reach) + 1),
      wakeFor_ (4 * kernel_.reach + 4),
      samples_ (history_ + pieceSamples, 0.0),
      excess_ ((rowsKept_ + pieceSamples) * points, 0.0),
      unclipped_ (pieceSamples, 0.0)
{}

void RailClipper::process (std::span<double> volts) noexcept
{
    while (! volts.empty())
    {
        const std::size_t count = std::min (volts.size(), pieceSamples);
        processPiece (volts.first (count));
        volts = volts.subspan (count);
    }
}

void RailClipper::processPiece (std::span<double> volts) noexcept
{
    const auto history = static_cast<std::ptrdiff_t> (history_);
    const auto count = static_cast<std::ptrdiff_t> (volts.size());
    bool isHarmless = true;
    for (std::size_t i = 0; i < volts.size(); ++i)
    {
        const double sample = std::clamp (volts[i], -largest_, largest_);
        samples_[history_ + i] = sample;
        isHarmless = isHarmless && std::abs (sample) <= harmless_; // NaN is not
    }

    // Up to seven outputs more than asked for, of samples left from an earlier piece; nobody reads them.
    weighAll (kernel_.unclipped.data(), kernel_.unclipped.size(), samples_.data(), unclipped_.data(),
              (volts.size() + 7) / 8);
    std::copy_n (unclipped_.begin(), count, volts.begin());
    if (! isHarmless || wake_ > 0)
        clipPiece (volts);
    std::copy (samples_.begin() + count, samples_.begin() + count + history, samples_.begin());
}

void RailClipper::clipPiece (std::span<double> volts) noexcept
{
    const int rowsLeft = 2 * kernel_.reach + 2; // outputs that see the last row
    for (std::size_t i = 0; i < volts.size(); ++i)
    {
        const bool isHarmless = std::abs (samples_[history_ + i]) <= harmless_;
        wake_ = isHarmless ? std::max (0, wake_ - 1) : wakeFor_;

        double* const row = excess_.data() + (rowsKept_ + i) * points;
        const bool mayExceed = wake_ > rowsLeft;
        if (mayExceed)
        {
            makeExcess (i);
            watchLamp (history_ + i);
        }
        else
            std::fill_n (row, points, 0.0);
        hasLastPoint_ = mayExceed;

        if (wake_ > 0)
            volts[i] -= weighRows (kernel_.back.data(), excess_.data() + i * points, kernel_.back.size());
    }

    const auto done = static_cast<std::ptrdiff_t> (volts.size() * points);
    const auto kept = static_cast<std::ptrdiff_t> (rowsKept_ * points);
    std::copy (excess_.begin() + done, excess_.begin() + done + kept, excess_.begin());
}

void RailClipper::makeExcess (std::size_t sample) noexcept
{
    const std::size_t taps = 2 * static_cast<std::size_t> (kernel_.reach);
    const double* const first = samples_.data() + history_ + sample + 1 - taps;
    std::array<double, points + 1> ends {};
    if (! hasLastPoint_)
    {
        findPoints (kernel_.between.data(), taps, first - 1, ends.data() + 1);
        lastPoint_ = ends[points];
    }
    findPoints (kernel_.between.data(), taps, first, ends.data() + 1);
    ends[0] = lastPoint_;
    lastPoint_ = ends[points];
    findExcess (ends.data(), rails_.low, rails_.high, excess_.data() + (rowsKept_ + sample) * points);
}

void RailClipper::watchLamp (std::size_t newest) noexcept
{
    const double* const last = samples_.data() + newest;
    const double mean = (*last + 4.0 * last[-1] + 6.0 * last[-2] + 4.0 * last[-3] + last[-4]) / 16.0;
    constexpr double beyond = 1.0 + lampTolerance;
    hasClipped_ = hasClipped_ || mean > beyond * rails_.high || mean < beyond * rails_.low;
}

void RailClipper::reset() noexcept
{
    std::fill (samples_.begin(), samples_.end(), 0.0);
    std::fill (excess_.begin(), excess_.end(), 0.0);
    wake_ = 0;
    hasLastPoint_ = false;
    hasClipped_ = false;
}

void RailClipper::copyStateFrom (const RailClipper& other) noexcept
{
    assert (other.history_ == history_);
    std::copy_n (other.samples_.begin(), history_, samples_.begin());
    std::copy_n (other.excess_.begin(), rowsKept_ * points, excess_.begin());
    wake_ = wakeFor_; // what is harmless here need not have been so there
    hasLastPoint_ = false;
    hasClipped_ = other.hasClipped_;
}

} // namespace stopwright
