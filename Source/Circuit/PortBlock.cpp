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
      entries_ (states, sources, 1, length),
      freely_ (length + states, lastPortColumn() + 1, states),
      ported_ (states, length, 0),
      fromStates_ (StateSpace::Matrix::Zero (length + states, states)),
      fromFirst_ (StateSpace::Matrix::Zero (length + states, sources)),
      drive_ (at (lastPortColumn() + 1)),
      result_ (at (freely_.outputSize())),
      added_ (at (ported_.outputSize()))
{}

void PortBlock::build (const CayleyStep& step) noexcept
{
    Table table { *this };
    entries_.place (step, table);
    goFromStatesToStates (step.fromPresent());
}

// s[0] = x[0] - fromPresent u[0], and x[L] = s[L] + fromPresent u[L].
void PortBlock::goFromStatesToStates (const StateSpace::Matrix& fromPresent) noexcept
{
    for (int row = 0; row < length + stateCount_; ++row)
    {
        for (int source = 0; source < sourceCount_; ++source)
        {
            double weight = fromFirst_ (row, source);
            for (int state = 0; state < stateCount_; ++state)
                weight -= fromStates_ (row, state) * fromPresent (state, source);
            freely_.set (row, firstColumn (source), weight);
        }
        for (int state = 0; state < stateCount_; ++state)
            freely_.set (row, lastPortColumn() + 1 + state, fromStates_ (row, state));
    }
    for (int state = 0; state < stateCount_; ++state)
    {
        for (int source = 0; source < sourceCount_ - 1; ++source)
            freely_.set (length + state, driveColumn (source, length), fromPresent (state, source));
        ported_.set (state, length - 1, fromPresent (state, sourceCount_ - 1));
    }
}

void PortBlock::Table::hearSource (int sample, int, int ofSample, int source, double weight) noexcept
{
    if (ofSample == 0)
        block.fromFirst_ (sample - 1, source) = weight;
    else if (! block.isPort (source))
        block.freely_.set (sample - 1, block.driveColumn (source, ofSample), weight);
    else
        block.kernel_[at (sample - ofSample)] = weight;
}

void PortBlock::Table::keepSource (int state, int ofSample, int source, double weight) noexcept
{
    if (ofSample == 0)
        block.fromFirst_ (length + state, source) = weight;
    else if (! block.isPort (source))
        block.freely_.set (length + state, block.driveColumn (source, ofSample), weight);
    else
        block.ported_.set (state, ofSample - 1, weight);
}

void PortBlock::Table::hearState (int sample, int, int state, double weight) noexcept
{
    block.fromStates_ (sample - 1, state) = weight;
}

void PortBlock::Table::keepState (int state, int ofState, double weight) noexcept
{
    block.fromStates_ (length + state, ofState) = weight;
}

void PortBlock::begin (const double* states, const double* lastSources, Samples& free) noexcept
{
    for (int source = 0; source < sourceCount_; ++source)
        drive_[at (firstColumn (source))] = lastSources[source];

    freely_.multiply (drive_.data(), states, result_.data());
    std::memcpy (free.data(), result_.data(), length * sizeof (double));
}

void PortBlock::finish (const Samples& port, double* states, double* lastSources) noexcept
{
    const double* drive = drive_.data();
    for (int source = 0; source < sourceCount_ - 1; ++source, drive += length + 1)
        lastSources[source] = drive[length];
    lastSources[sourceCount_ - 1] = port.back();

    ported_.multiply (port.data(), nullptr, added_.data());
    for (int state = 0; state < stateCount_; ++state)
        states[state] = result_.data()[length + state] + added_.data()[state];
}

} // namespace stopwright
