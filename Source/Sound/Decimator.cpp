// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/Decimator.h"

#include "Sound/KaiserLowpass.h"
#include "Units/WideVector.h"

#include <algorithm>
#include <array>
#include <cassert>

namespace stopwright
{

namespace
{

constexpr double highestHeardHz = 20000.0;
constexpr double highestPartOfRate = 0.4535; // 20 kHz at 44.1 kHz
constexpr double designAttenuationDb = 140.0;
constexpr std::size_t lanes = 8;

// Sums run in `lanes` separate threads of addition: a compiler may not reorder a single sum, and one chain of additions
// waits four cycles for each of them.
STOPWRIGHT_WIDE
void weighEveryFactorth (const double* coefficients,
                         std::size_t length,
                         const double* samples,
                         std::size_t factor,
                         double* out,
                         std::size_t count) noexcept
{
    for (std::size_t frame = 0; frame < count; ++frame)
    {
        const double* in = samples + frame * factor;
        std::array<double, lanes> sums {};
        for (std::size_t k = 0; k < length; k += lanes)
            for (std::size_t lane = 0; lane < lanes; ++lane)
                sums[lane] += coefficients[k + lane] * in[k + lane];
        out[frame] = ((sums[0] + sums[4]) + (sums[2] + sums[6])) + ((sums[1] + sums[5]) + (sums[3] + sums[7]));
    }
}

} // namespace

Decimator::Decimator (double deviceRateHz, int factor, int maxDeviceFrames) : factor_ (factor)
{
    if (factor == 1)
        return;

    const double passHz = std::min (highestHeardHz, highestPartOfRate * deviceRateHz);
    const double internalRateHz = deviceRateHz * factor;
    coefficients_ = kaiserLowpass ({ .passEdge = passHz / internalRateHz,
                                     .stopEdge = (deviceRateHz - passHz) / internalRateHz,
                                     .attenuationDb = designAttenuationDb,
                                     .halfLengthMultiple = factor });
    historyLength_ = coefficients_.size() - 1;
    delayFrames_ = static_cast<int> (historyLength_) / 2 / factor;

    // Padded with zeros to whole lanes; the samples reach as far beyond the block.
    coefficients_.resize ((coefficients_.size() + lanes - 1) / lanes * lanes, 0.0);
    const auto blockLength = static_cast<std::size_t> (factor) * static_cast<std::size_t> (maxDeviceFrames);
    samples_.assign (coefficients_.size() + blockLength, 0.0);
}

void Decimator::process (std::span<const double> in, std::span<double> out) noexcept
{
    assert (in.size() == out.size() * static_cast<std::size_t> (factor_));
    if (factor_ == 1)
    {
        std::copy (in.begin(), in.end(), out.begin());
        return;
    }

    assert (historyLength_ + in.size() <= samples_.size());
    const auto history = static_cast<std::ptrdiff_t> (historyLength_);
    const auto count = static_cast<std::ptrdiff_t> (in.size());
    std::copy (in.begin(), in.end(), samples_.begin() + history);
    weighEveryFactorth (coefficients_.data(), coefficients_.size(), samples_.data(), static_cast<std::size_t> (factor_),
                        out.data(), out.size());
    std::copy (samples_.begin() + count, samples_.begin() + count + history, samples_.begin());
}

void Decimator::reset() noexcept
{
    std::fill (samples_.begin(), samples_.end(), 0.0);
}

void Decimator::copyStateFrom (const Decimator& other) noexcept
{
    assert (isLike (other));
    std::copy_n (other.samples_.begin(), historyLength_, samples_.begin());
}

bool Decimator::isLike (const Decimator& other) const noexcept
{
    return other.factor_ == factor_ && other.historyLength_ == historyLength_;
}

} // namespace stopwright
