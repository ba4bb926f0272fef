// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/RailKernel.h"

#include "Sound/KaiserLowpass.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdlib>

namespace stopwright
{

namespace
{

constexpr double highestHeardHz = 20000.0;
constexpr double stopPartOfRate = 0.6;
constexpr double attenuationDb = 120.0;

// The prototype has twice the points: the odd ones lie between the even ones.
constexpr int fine = 2 * RailKernel::points;

class Prototype
{
public:
    explicit Prototype (double rateHz)
        : coefficients_ (kaiserLowpass ({ .passEdge = highestHeardHz / rateHz / fine,
                                          .stopEdge = stopPartOfRate / fine,
                                          .attenuationDb = attenuationDb,
                                          .halfLengthMultiple = fine })),
          half_ (static_cast<int> (coefficients_.size()) / 2)
    {}

    int reach() const { return half_ / fine; }

    double operator() (int index) const
    {
        const int place = half_ + index;
        return std::abs (index) > half_ ? 0.0 : coefficients_[static_cast<std::size_t> (place)];
    }

private:
    std::vector<double> coefficients_;
    int half_;
};

/// Each point's weights sum to 1, so that a steady voltage comes out as it is.
std::vector<double> weightsBetween (const Prototype& prototype, int reach, double& largestGain)
{
    constexpr auto points = static_cast<std::size_t> (RailKernel::points);
    std::vector<double> weights (2 * static_cast<std::size_t> (reach) * points);
    for (std::size_t point = 0; point < points; ++point)
    {
        const int place = fine * (reach - 1) + 2 * static_cast<int> (point) + 1;
        double sum = 0.0;
        double size = 0.0;
        for (std::size_t row = 0; row < weights.size() / points; ++row)
        {
            const double weight = prototype (place - fine * static_cast<int> (row));
            weights[row * points + point] = weight;
            sum += weight;
            size += std::abs (weight);
        }
        for (std::size_t row = 0; row < weights.size() / points; ++row)
            weights[row * points + point] /= sum;
        largestGain = std::max (largestGain, size / sum);
    }
    return weights;
}

/// Index 0 lies reach + 1 samples before the one that is made. The mean of two points droops as cos (w / 2), w the phase
/// from one to the next; the side weights of -1/8 lift it again to the second order.
std::vector<double> weightsBack (const Prototype& prototype, int reach)
{
    const int length = RailKernel::points * (2 * reach + 2);
    std::vector<double> weights;
    double sum = 0.0;
    for (int index = 0; index < length; ++index)
    {
        const int place = 2 * (index - RailKernel::points * (reach + 1));
        weights.push_back (1.25 * prototype (place) - 0.125 * (prototype (place - 2) + prototype (place + 2)));
        sum += weights.back();
    }
    for (double& weight : weights)
        weight /= sum;
    return weights;
}

/// What a unit sample becomes on its way up and back.
std::vector<double> wayThrough (const RailKernel& kernel)
{
    constexpr auto points = static_cast<std::size_t> (RailKernel::points);
    const auto rows = 2 * static_cast<std::size_t> (kernel.reach);
    std::vector<double> unclipped (2 * rows + 1, 0.0);

    // A mean lies between its own point and the one before, which for index 0 is the last of the row before. The points
    // of a row are made of the samples row .. row + rows - 1 of the window.
    for (std::size_t row = 0; row < rows + 2; ++row)
        for (std::size_t index = 0; index < points; ++index)
        {
            const double half = 0.5 * kernel.back[row * points + index];
            if (half == 0.0)
                continue; // so are all of the first row but the last
            const std::size_t rowBefore = index == 0 ? row - 1 : row;
            const std::size_t pointBefore = index == 0 ? points - 1 : index - 1;
            for (std::size_t tap = 0; tap < rows; ++tap)
            {
                unclipped[row + tap] += half * kernel.between[tap * points + index];
                unclipped[rowBefore + tap] += half * kernel.between[tap * points + pointBefore];
            }
        }
    return unclipped;
}

} // namespace

RailKernel makeRailKernel (double rateHz)
{
    const Prototype prototype (rateHz);
    RailKernel kernel;
    kernel.reach = prototype.reach();
    kernel.between = weightsBetween (prototype, kernel.reach, kernel.largestGain);
    kernel.back = weightsBack (prototype, kernel.reach);
    kernel.unclipped = wayThrough (kernel);
    return kernel;
}

} // namespace stopwright
