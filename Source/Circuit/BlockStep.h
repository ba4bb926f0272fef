// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/AlignedNumbers.h"
#include "Circuit/CayleyStep.h"
#include "Circuit/PackedProduct.h"

#include <vector>

namespace stopwright
{

/// Several samples of a CayleyStep as one product, so that the recursion waits once per block instead of every sample.
///
/// With s = x - fromPresent u the step becomes s[n] = T s[n-1] + K u[n-1], y[n] = C s[n] + F u[n], where T = transition,
/// K = T fromPresent + fromLast, F = C fromPresent + D. A block of L samples is then
///   [y[1] .. y[L]; s[L]] = M [u[0] .. u[L]; s[0]],
/// the same numbers as sample by sample up to rounding. x is physical again at the end of each run.
/// Threading: construct on [control], the rest on [audio] without allocation or lock.
/// Source: Burrus, "Block realization of digital filters", IEEE Trans. Audio Electroacoustics 20(4), 1972.
class BlockStep
{
public:
    BlockStep (int states, int sources, int outputs);

    int blockLength() const noexcept { return length_; }

    void build (const CayleyStep& step) noexcept;

    /// Runs `blockCount` whole blocks from frame `offset` on. `states` and `lastSources` are x and u as in CayleyStep.
    void run (double* states,
              double* lastSources,
              const double* const* sources,
              double* const* outputs,
              int offset,
              int blockCount) noexcept;

private:
    using Matrix = StateSpace::Matrix;

    void placeDrive (const CayleyStep& step) noexcept;
    void placeStates (const CayleyStep& step) noexcept;
    void runBlock (const double* const* sources,
                   double* const* outputs,
                   int firstFrame,
                   const double* shifted,
                   double* result) noexcept;

    int sourceColumn (int sample, int source) const noexcept { return source * (length_ + 1) + sample; }

    int stateColumn() const noexcept { return (length_ + 1) * sourceCount_; }

    int outputRow (int sample, int output) const noexcept { return output * length_ + sample - 1; }

    int stateRow() const noexcept { return length_ * outputCount_; }

    int stateCount_ = 0, sourceCount_ = 0, outputCount_ = 0, length_ = 0;
    Matrix fromPresent_;       ///< of the step: x = s + fromPresent u
    Matrix kept_, nextKept_;   ///< T^k K
    Matrix heard_, nextHeard_; ///< C T^k
    Matrix direct_;            ///< F, then C T^k K
    Matrix power_, nextPower_; ///< T^k
    PackedProduct product_;
    std::vector<double> drive_; ///< u[0] .. u[L] of every source
    std::vector<double> shifted_;
    AlignedNumbers results_; ///< two, in turn
};

} // namespace stopwright
