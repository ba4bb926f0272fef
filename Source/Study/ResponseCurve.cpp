// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/ResponseCurve.h"

#include <cmath>
#include <cstddef>
#include <utility>

namespace stopwright
{

namespace
{

constexpr double exactToHz = 20000.0;
constexpr double stepsAnOctave = 48.0;
constexpr int octaves = 10;

} // namespace

ResponseCurve::ResponseCurve (Response exact) : exact_ (std::move (exact))
{
    const int count = static_cast<int> (stepsAnOctave) * octaves;
    for (int step = 0; step <= count; ++step)
        kept_.push_back (exact_ (exactToHz * std::exp2 (step / stepsAnOctave)));
}

std::complex<double> ResponseCurve::above (double frequencyHz) const noexcept
{
    const double place = stepsAnOctave * std::log2 (frequencyHz / exactToHz);
    const auto lower = static_cast<std::size_t> (place);
    if (lower + 1 >= kept_.size())
        return kept_.back();
    const double part = place - static_cast<double> (lower);
    return (1.0 - part) * kept_[lower] + part * kept_[lower + 1];
}

void ResponseCurve::fill (double baseHz, std::span<std::complex<double>> bins) const
{
    if (! bins.empty())
        bins[0] = 0.0;
    for (std::size_t bin = 1; bin < bins.size(); ++bin)
    {
        const double frequencyHz = static_cast<double> (bin) * baseHz;
        bins[bin] = frequencyHz <= exactToHz ? exact_ (frequencyHz) : above (frequencyHz);
    }
}

} // namespace stopwright
