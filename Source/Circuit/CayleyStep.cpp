// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/CayleyStep.h"

#include "Circuit/Elimination.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stopwright
{

CayleyStep::CayleyStep (int states, int sources, int outputs, double sampleRateHz)
    : stateCount_ (states),
      sourceCount_ (sources),
      outputCount_ (outputs),
      halfPeriodSeconds_ (0.5 / sampleRateHz),
      transition_ (StateSpace::Matrix::Zero (states, states)),
      fromLast_ (StateSpace::Matrix::Zero (states, sources)),
      fromPresent_ (StateSpace::Matrix::Zero (states, sources)),
      c_ (StateSpace::Matrix::Zero (outputs, states)),
      d_ (StateSpace::Matrix::Zero (outputs, sources)),
      solve_ (states, 2 * (states + sources)),
      scales_ (static_cast<std::size_t> (states)),
      product_ (outputs + states, 2 * sources, states),
      drive_ (2 * static_cast<std::size_t> (sources)),
      results_ (2 * static_cast<std::size_t> (product_.outputSize()))
{}

bool CayleyStep::build (const StateSpace& network) noexcept
{
    assemble (network);
    const Elimination solve { 0, 0, stateCount_ };
    if (! solve.complete (solve_, scales_) || ! take (network))
        return false;
    pack();
    return true;
}

// [I - hA/2 | I + hA/2 | hB/2 - B_dot | hB/2 + B_dot]
void CayleyStep::assemble (const StateSpace& network) noexcept
{
    for (int row = 0; row < stateCount_; ++row)
    {
        double* left = solve_.row (row);
        double* right = left + stateCount_;
        double* last = right + stateCount_;
        double* present = last + sourceCount_;
        for (int column = 0; column < stateCount_; ++column)
        {
            right[column] = halfPeriodSeconds_ * network.a (row, column);
            left[column] = -right[column];
        }
        left[row] += 1.0;
        right[row] += 1.0;
        for (int source = 0; source < sourceCount_; ++source)
        {
            const double half = halfPeriodSeconds_ * network.b (row, source);
            last[source] = half - network.bDot (row, source);
            present[source] = half + network.bDot (row, source);
        }
    }
}

bool CayleyStep::take (const StateSpace& network) noexcept
{
    double sum = 0.0;
    for (int row = 0; row < stateCount_; ++row)
        for (int column = stateCount_; column < solve_.columns(); ++column)
            sum += solve_.row (row)[column];
    if (! std::isfinite (sum))
        return false;

    for (int row = 0; row < stateCount_; ++row)
    {
        const double* solved = solve_.row (row) + stateCount_;
        std::copy_n (solved, stateCount_, rowOf (transition_, row));
        std::copy_n (solved + stateCount_, sourceCount_, rowOf (fromLast_, row));
        std::copy_n (solved + stateCount_ + sourceCount_, sourceCount_, rowOf (fromPresent_, row));
    }
    std::copy_n (network.c.data(), network.c.size(), c_.data());
    std::copy_n (network.d.data(), network.d.size(), d_.data());
    return true;
}

void CayleyStep::pack() noexcept
{
    const int firstState = 2 * sourceCount_;
    for (int output = 0; output < outputCount_; ++output)
        packOutput (output);
    for (int state = 0; state < stateCount_; ++state)
    {
        const int row = outputCount_ + state;
        for (int source = 0; source < sourceCount_; ++source)
        {
            product_.set (row, 2 * source, fromLast_ (state, source));
            product_.set (row, 2 * source + 1, fromPresent_ (state, source));
        }
        for (int column = 0; column < stateCount_; ++column)
            product_.set (row, firstState + column, transition_ (state, column));
    }
}

// y1 = c x1 + d u1 with x1 put in, so that one product gives both.
void CayleyStep::packOutput (int output) noexcept
{
    for (int source = 0; source < sourceCount_; ++source)
    {
        double last = 0.0;
        double present = d_ (output, source);
        for (int state = 0; state < stateCount_; ++state)
        {
            last += c_ (output, state) * fromLast_ (state, source);
            present += c_ (output, state) * fromPresent_ (state, source);
        }
        product_.set (output, 2 * source, last);
        product_.set (output, 2 * source + 1, present);
    }
    for (int column = 0; column < stateCount_; ++column)
    {
        double sum = 0.0;
        for (int state = 0; state < stateCount_; ++state)
            sum += c_ (output, state) * transition_ (state, column);
        product_.set (output, 2 * sourceCount_ + column, sum);
    }
}

void CayleyStep::run (double* states,
                      double* lastSources,
                      const double* const* sources,
                      double* const* outputs,
                      int offset,
                      int frameCount) noexcept
{
    const double* state = states;
    double* result = results_.data();
    double* nextResult = result + product_.outputSize();
    for (int source = 0; source < sourceCount_; ++source)
        drive_[2 * static_cast<std::size_t> (source) + 1] = lastSources[source];

    for (int frame = offset; frame < offset + frameCount; ++frame)
    {
        double* drive = drive_.data();
        for (int source = 0; source < sourceCount_; ++source, drive += 2)
        {
            drive[0] = drive[1];
            drive[1] = sources[source][frame];
        }
        product_.multiply (drive_.data(), state, result);
        for (int output = 0; output < outputCount_; ++output)
            outputs[output][frame] = result[output];
        state = result + outputCount_;
        std::swap (result, nextResult);
    }
    if (frameCount > 0)
        std::copy_n (state, stateCount_, states);
    for (int source = 0; source < sourceCount_; ++source)
        lastSources[source] = drive_[2 * static_cast<std::size_t> (source) + 1];
}

// With J = (I - hA/2)^-1: transition = 2J - I, fromLast + fromPresent = hJB, fromPresent - fromLast = 2 J B_dot, so
// one half step  J (x0 + hB/2 u1 + B_dot (u1 - u0))  needs nothing else.
void CayleyStep::halfStep (const double* from,
                           const double* sourcesFrom,
                           const double* sourcesTo,
                           double* to) const noexcept
{
    for (int row = 0; row < stateCount_; ++row)
    {
        double sum = 0.5 * from[row];
        for (int column = 0; column < stateCount_; ++column)
            sum += 0.5 * transition_ (row, column) * from[column];
        for (int source = 0; source < sourceCount_; ++source)
        {
            const double drive = 0.5 * (fromPresent_ (row, source) + fromLast_ (row, source));
            const double rate = 0.5 * (fromPresent_ (row, source) - fromLast_ (row, source));
            sum += drive * sourcesTo[source] + rate * (sourcesTo[source] - sourcesFrom[source]);
        }
        to[row] = sum;
    }
}

void CayleyStep::runDamped (double* states,
                            double* lastSources,
                            const double* const* sources,
                            double* const* outputs,
                            int offset) noexcept
{
    double* half = results_.data();
    double* middle = drive_.data();
    double* present = middle + sourceCount_;
    for (int source = 0; source < sourceCount_; ++source)
    {
        present[source] = sources[source][offset];
        middle[source] = 0.5 * (lastSources[source] + present[source]);
    }
    halfStep (states, lastSources, middle, half);
    halfStep (half, middle, present, states);
    std::copy_n (present, sourceCount_, lastSources);

    for (int output = 0; output < outputCount_; ++output)
    {
        double sum = 0.0;
        for (int state = 0; state < stateCount_; ++state)
            sum += c_ (output, state) * states[state];
        for (int source = 0; source < sourceCount_; ++source)
            sum += d_ (output, source) * present[source];
        outputs[output][offset] = sum;
    }
}

} // namespace stopwright
