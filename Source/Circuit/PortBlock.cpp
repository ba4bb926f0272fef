// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/PortBlock.h"

#include <cstring>

namespace stopwright
{

namespace
{

std::size_t at (int index) noexcept
{
    return static_cast<std::size_t> (index);
}

} // namespace

PortBlock::PortBlock (int states, int sources)
    : stateCount_ (states),
      sourceCount_ (sources),
      fromPresent_ (StateSpace::Matrix::Zero (states, sources)),
      entries_ (states, sources, 1, length),
      freely_ (length + states, lastPortColumn() + 1, states),
      ported_ (states, length, 0),
      drive_ (at (lastPortColumn() + 1)),
      shifted_ (at (states)),
      result_ (at (freely_.outputSize())),
      added_ (at (ported_.outputSize()))
{}

void PortBlock::build (const CayleyStep& step) noexcept
{
    fromPresent_ = step.fromPresent();
    Table table { *this };
    entries_.place (step, table);
}

void PortBlock::Table::hearSource (int sample, int, int ofSample, int source, double weight) noexcept
{
    if (! block.isPort (source))
        block.freely_.set (sample - 1, block.driveColumn (source, ofSample), weight);
    else if (ofSample == 0)
        block.freely_.set (sample - 1, block.lastPortColumn(), weight);
    else
        block.kernel_[at (sample - ofSample)] = weight;
}

void PortBlock::Table::keepSource (int state, int ofSample, int source, double weight) noexcept
{
    if (! block.isPort (source))
        block.freely_.set (length + state, block.driveColumn (source, ofSample), weight);
    else if (ofSample == 0)
        block.freely_.set (length + state, block.lastPortColumn(), weight);
    else
        block.ported_.set (state, ofSample - 1, weight);
}

void PortBlock::Table::hearState (int sample, int, int state, double weight) noexcept
{
    block.freely_.set (sample - 1, block.lastPortColumn() + 1 + state, weight);
}

void PortBlock::Table::keepState (int state, int ofState, double weight) noexcept
{
    block.freely_.set (length + state, block.lastPortColumn() + 1 + ofState, weight);
}

void PortBlock::begin (const double* states,
                       const double* lastSources,
                       const double* const* sources,
                       Samples& free) noexcept
{
    for (int state = 0; state < stateCount_; ++state)
    {
        double sum = states[state];
        for (int source = 0; source < sourceCount_; ++source)
            sum -= fromPresent_ (state, source) * lastSources[source];
        shifted_[at (state)] = sum;
    }

    double* drive = drive_.data();
    for (int source = 0; source < sourceCount_ - 1; ++source, drive += length + 1)
    {
        drive[0] = lastSources[source];
        std::memcpy (drive + 1, sources[source], length * sizeof (double));
    }
    *drive = lastSources[sourceCount_ - 1];

    freely_.multiply (drive_.data(), shifted_.data(), result_.data());
    std::memcpy (free.data(), result_.data(), length * sizeof (double));
}

// The last sample of s[L] still lacks the share of u[L] itself: x = s + fromPresent u.
void PortBlock::finish (const Samples& port, double* states, double* lastSources) noexcept
{
    const double* drive = drive_.data();
    for (int source = 0; source < sourceCount_ - 1; ++source, drive += length + 1)
        lastSources[source] = drive[length];
    lastSources[sourceCount_ - 1] = port.back();

    ported_.multiply (port.data(), nullptr, added_.data());
    for (int state = 0; state < stateCount_; ++state)
    {
        double sum = result_.data()[length + state] + added_.data()[state];
        for (int source = 0; source < sourceCount_; ++source)
            sum += fromPresent_ (state, source) * lastSources[source];
        states[state] = sum;
    }
}

} // namespace stopwright
