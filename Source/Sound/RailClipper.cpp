// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/RailClipper.h"

#include "Units/WideVector.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstring>

namespace stopwright
{

namespace
{

constexpr auto points = static_cast<std::size_t> (RailKernel::points);
constexpr double largestOverdrive = 1e6;
constexpr double roundingMargin = 0.999;

// Vectors of the compiler instead of plain loops: g++ 12 takes the outer loop of two for the one to run side by side, and
// shuffles.
using Quad = double __attribute__ ((vector_size (32)));
constexpr std::size_t width = sizeof (Quad) / sizeof (double);

[[gnu::always_inline]] inline void addProduct (Quad& sum, const double* in, double weight) noexcept
{
    Quad four {};
    std::memcpy (&four, in, sizeof four);
    sum += weight * four;
}

/// out[0 .. 3] and out[4 .. 7] from two sums each: one chain of multiply-adds would wait for itself.
[[gnu::always_inline]] inline void
    store (double* out, const std::array<Quad, 2>& even, const std::array<Quad, 2>& odd) noexcept
{
    const Quad first = even[0] + odd[0];
    const Quad second = even[1] + odd[1];
    std::memcpy (out, &first, sizeof first);
    std::memcpy (out + width, &second, sizeof second);
}

/// `groups` times eight outputs, each the sum of an odd number of weighed samples.
STOPWRIGHT_WIDE
void weighAll (const double* weights, std::size_t count, const double* in, double* out, std::size_t groups) noexcept
{
    for (std::size_t group = 0; group < groups; ++group, in += 2 * width, out += 2 * width)
    {
        std::array<Quad, 2> even {};
        std::array<Quad, 2> odd {};
        for (std::size_t k = 0; k + 1 < count; k += 2)
        {
            addProduct (even[0], in + k, weights[k]);
            addProduct (even[1], in + k + width, weights[k]);
            addProduct (odd[0], in + k + 1, weights[k + 1]);
            addProduct (odd[1], in + k + 1 + width, weights[k + 1]);
        }
        addProduct (even[0], in + count - 1, weights[count - 1]);
        addProduct (even[1], in + count - 1 + width, weights[count - 1]);
        store (out, even, odd);
    }
}

/// The points of one row, from an even number of samples.
STOPWRIGHT_WIDE
void findPoints (const double* weights, std::size_t count, const double* in, double* out) noexcept
{
    std::array<Quad, 2> even {};
    std::array<Quad, 2> odd {};
    for (std::size_t k = 0; k < count; k += 2, weights += 2 * points)
    {
        addProduct (even[0], weights, in[k]);
        addProduct (even[1], weights + width, in[k]);
        addProduct (odd[0], weights + points, in[k + 1]);
        addProduct (odd[1], weights + points + width, in[k + 1]);
    }
    store (out, even, odd);
}

/// Mean of max (0, v) along a straight line from a to b.
[[gnu::always_inline]] inline double meanAboveZero (double a, double b) noexcept
{
    const double upper = std::max (a, b);
    const double lower = std::min (a, b);
    const double crossing = 0.5 * upper * upper / (upper - lower);
    const double above = lower >= 0.0 ? 0.5 * (upper + lower) : crossing;
    return upper <= 0.0 ? 0.0 : above;
}

/// ends[j] and ends[j + 1] are the ends of length j. A rail that no end is beyond would add zeros only.
STOPWRIGHT_WIDE
void findExcess (const double* ends, double low, double high, double* __restrict excess) noexcept
{
    bool isAbove = false;
    bool isBelow = false;
    for (std::size_t j = 0; j <= points; ++j)
    {
        isAbove |= ! (ends[j] <= high); // or is no number
        isBelow |= ends[j] < low;
    }
    for (std::size_t j = 0; j < points; ++j)
        excess[j] = 0.0;
    if (isAbove)
        for (std::size_t j = 0; j < points; ++j)
            excess[j] = meanAboveZero (ends[j] - high, ends[j + 1] - high);
    if (isBelow)
        for (std::size_t j = 0; j < points; ++j)
            excess[j] -= meanAboveZero (low - ends[j], low - ends[j + 1]);
}

/// `count` is a multiple of points.
STOPWRIGHT_WIDE
double weighRows (const double* weights, const double* in, std::size_t count) noexcept
{
    std::array<double, points> sums {};
    for (std::size_t k = 0; k < count; k += points)
        for (std::size_t lane = 0; lane < points; ++lane)
            sums[lane] += weights[k + lane] * in[k + lane];
    return ((sums[0] + sums[4]) + (sums[2] + sums[6])) + ((sums[1] + sums[5]) + (sums[3] + sums[7]));
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
