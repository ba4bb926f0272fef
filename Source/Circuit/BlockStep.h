// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/AlignedNumbers.h"
#include "Circuit/BlockEntries.h"
#include "Circuit/CayleyStep.h"
#include "Circuit/PackedProduct.h"

#include <vector>

namespace stopwright
{

/// Several samples of a CayleyStep as one product, so that the recursion waits once per block instead of every sample.
///
/// A block of L samples is
///   [y[1] .. y[L]; s[L]] = M [u[0] .. u[L]; s[0]]
/// with s and the numbers of M as in BlockEntries: the same results as sample by sample up to rounding. x is physical
/// again at the end of each run.
/// Threading: construct on [control], the rest on [audio] without allocation or lock.
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

    /// Where BlockEntries puts the numbers.
    struct Table
    {
        void hearSource (int sample, int output, int ofSample, int source, double weight) noexcept
        {
            block.product_.set (block.outputRow (sample, output), block.sourceColumn (ofSample, source), weight);
        }

        void keepSource (int state, int ofSample, int source, double weight) noexcept
        {
            block.product_.set (block.stateRow() + state, block.sourceColumn (ofSample, source), weight);
        }

        void hearState (int sample, int output, int state, double weight) noexcept
        {
            block.product_.set (block.outputRow (sample, output), block.stateColumn() + state, weight);
        }

        void keepState (int state, int ofState, double weight) noexcept
        {
            block.product_.set (block.stateRow() + state, block.stateColumn() + ofState, weight);
        }

        BlockStep& block;
    };

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
    Matrix fromPresent_; ///< of the step: x = s + fromPresent u
    BlockEntries entries_;
    PackedProduct product_;
    std::vector<double> drive_; ///< u[0] .. u[L] of every source
    std::vector<double> shifted_;
    AlignedNumbers results_; ///< two, in turn
};

} // namespace stopwright
