// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/SteppedNetwork.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

std::size_t at (int index) noexcept
{
    return static_cast<std::size_t> (index);
}

} // namespace

SteppedNetwork::SteppedNetwork (StateSpaceBuilder builder, double sampleRateHz)
    : builder_ (std::move (builder)),
      network_ (builder_.makeStateSpace()),
      step_ (builder_.stateCount(), builder_.sourceCount(), builder_.outputCount(), sampleRateHz),
      blocks_ (builder_.stateCount(), builder_.sourceCount(), builder_.outputCount()),
      states_ (at (builder_.stateCount()), 0.0),
      lastSources_ (at (builder_.sourceCount()), 0.0)
{}

bool SteppedNetwork::build (std::span<const double> knobValues) noexcept
{
    if (! builder_.build (knobValues, network_) || ! step_.build (network_))
        return false;
    hasBlocks_ = false;
    return true;
}

void SteppedNetwork::run (const double* const* sources,
                          double* const* outputs,
                          int offset,
                          int frameCount,
                          bool inBlocks) noexcept
{
    const int end = offset + frameCount;
    if (isDamped_ && offset < end)
    {
        isDamped_ = false;
        step_.runDamped (states_.data(), lastSources_.data(), sources, outputs, offset);
        ++offset;
    }
    const int blockCount = inBlocks ? (end - offset) / blocks_.blockLength() : 0;
    if (blockCount > 0)
    {
        if (! hasBlocks_)
            blocks_.build (step_);
        hasBlocks_ = true;
        blocks_.run (states_.data(), lastSources_.data(), sources, outputs, offset, blockCount);
        offset += blockCount * blocks_.blockLength();
    }
    step_.run (states_.data(), lastSources_.data(), sources, outputs, offset, end - offset);
}

void SteppedNetwork::reset() noexcept
{
    isDamped_ = false;
    std::fill (states_.begin(), states_.end(), 0.0);
    std::fill (lastSources_.begin(), lastSources_.end(), 0.0);
}

double SteppedNetwork::known (int index) const noexcept
{
    const int stateCount = network_.stateCount();
    if (index < stateCount)
        return states_[at (index)];

    const int row = index - stateCount;
    if (row >= network_.dependentCount())
        return lastSources_[at (row - network_.dependentCount())];

    double sum = 0.0;
    for (int state = 0; state < stateCount; ++state)
        sum += network_.dependent (row, state) * states_[at (state)];
    for (int source = 0; source < network_.sourceCount(); ++source)
        sum += network_.dependent (row, stateCount + source) * lastSources_[at (source)];
    return sum;
}

double SteppedNetwork::quantity (std::size_t index) const noexcept
{
    double sum = 0.0;
    for (const auto& term : builder_.quantities()[index].form.terms())
        sum += term.weight * known (term.index);
    return sum;
}

double SteppedNetwork::storedEnergy (std::span<const double> knobValues) const noexcept
{
    const auto& quantities = builder_.quantities();
    double joules = 0.0;
    for (std::size_t index = 0; index < quantities.size(); ++index)
    {
        if (quantities[index].knob < 0)
            continue;
        const double value = quantity (index);
        joules += 0.5 * knobValues[at (quantities[index].knob)] * value * value;
    }
    return joules;
}

} // namespace stopwright
