// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/AlignedNumbers.h"
#include "Circuit/BlockEntries.h"
#include "Circuit/CayleyStep.h"
#include "Circuit/PackedProduct.h"

#include <array>
#include <span>
#include <vector>

namespace stopwright
{

/// Eight samples at a time of a network with one output whose last source, the port, is not known beforehand: first what
/// the output would be with the port at zero volts, then, when the port's volts are known, the states.
///
/// The block of BlockEntries in two parts. With p the port's volts, y[n] = free[n] + sum over j <= n of
/// kernel[n-j] p[j], j = 1 .. 8; p[0], of the block before, is in free. What turns x into s and back is worked into the
/// numbers, so that blocks go from x to x.
/// Threading: construct on [control], the rest on [audio] without allocation or lock.
class PortBlock
{
public:
    static constexpr int length = 8;
    using Samples = std::array<double, length>;

    /// `sources` counts the port.
    PortBlock (int states, int sources);

    void build (const CayleyStep& step) noexcept;

    /// How the port at one sample is heard at that one and the seven after it.
    const Samples& kernel() const noexcept { return kernel_; }

    /// Where the samples of a source other than the port go, before begin.
    std::span<double, length> samplesOf (int source) noexcept
    {
        return std::span<double, length> (drive_.data() + driveColumn (source, 1), length);
    }

    /// Writes free[1 .. 8]. `states` and `lastSources` are x and u as in CayleyStep.
    void begin (const double* states, const double* lastSources, Samples& free) noexcept;

    /// Moves `states` and `lastSources` past the block that was begun, with these volts at the port.
    void finish (const Samples& port, double* states, double* lastSources) noexcept;

private:
    /// Where BlockEntries puts the numbers.
    struct Table
    {
        void hearSource (int sample, int output, int ofSample, int source, double weight) noexcept;
        void keepSource (int state, int ofSample, int source, double weight) noexcept;
        void hearState (int sample, int output, int state, double weight) noexcept;
        void keepState (int state, int ofState, double weight) noexcept;

        PortBlock& block;
    };

    bool isPort (int source) const noexcept { return source == sourceCount_ - 1; }

    int driveColumn (int source, int sample) const noexcept { return source * (length + 1) + sample; }

    /// The port's last volts stand behind all samples of the other sources.
    int lastPortColumn() const noexcept { return (sourceCount_ - 1) * (length + 1); }

    /// The column of freely_ for a source's volts before the block.
    int firstColumn (int source) const noexcept { return isPort (source) ? lastPortColumn() : driveColumn (source, 0); }

    void goFromStatesToStates (const StateSpace::Matrix& fromPresent) noexcept;

    int stateCount_;
    int sourceCount_;
    BlockEntries entries_;
    PackedProduct freely_;                      ///< [y; x[L] but for the port] from [u but the port; p[0]] and x[0]
    PackedProduct ported_;                      ///< what p[1 .. L] adds to x[L]
    StateSpace::Matrix fromStates_, fromFirst_; ///< rows of freely_: what s[0] and u[0] do
    Samples kernel_ {};
    std::vector<double> drive_;
    AlignedNumbers result_;
    AlignedNumbers added_;
};

} // namespace stopwright
