// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/SteppedNetwork.h"

#include "Circuit/NetworkQuantity.h"

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

double SteppedNetwork::quantity (std::size_t index) const noexcept
{
    return valueOf (builder_.quantities()[index], network_, states_, lastSources_);
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
