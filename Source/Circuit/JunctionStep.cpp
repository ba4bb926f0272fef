// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/JunctionStep.h"

#include <algorithm>

namespace stopwright
{

JunctionStep::JunctionStep (const StateSpace& sizes, int ports, double sampleRateHz)
    : stateCount_ (sizes.stateCount()),
      sourceCount_ (sizes.sourceCount()),
      outputCount_ (sizes.outputCount()),
      portCount_ (ports),
      cayley_ (stateCount_, sourceCount_, outputCount_, sampleRateHz),
      product_ (outputCount_ + stateCount_, 2 * sourceCount_ - ports, stateCount_),
      drive_ (static_cast<std::size_t> (2 * sourceCount_ - ports)),
      response_ (StateSpace::Matrix::Zero (outputCount_ + stateCount_, ports))
{}

bool JunctionStep::build (const StateSpace& network) noexcept
{
    if (! cayley_.build (network))
        return false;
    for (int output = 0; output < outputCount_; ++output)
        packOutput (output);
    for (int state = 0; state < stateCount_; ++state)
        packState (state);
    return true;
}

void JunctionStep::writeImpedance (StateSpace::Matrix& impedance) const noexcept
{
    for (Eigen::Index row = 0; row < impedance.rows(); ++row)
        for (Eigen::Index column = 0; column < impedance.cols(); ++column)
            impedance (row, column) = response_ (outputCount_ - portCount_ + row, column);
}

void JunctionStep::writeInstantImpedance (StateSpace::Matrix& impedance) const noexcept
{
    for (Eigen::Index row = 0; row < impedance.rows(); ++row)
        for (Eigen::Index column = 0; column < impedance.cols(); ++column)
            impedance (row, column) = cayley_.d() (outputCount_ - portCount_ + row, sourceCount_ - portCount_ + column);
}

// y1 = c x1 + d u1 with x1 put in, so that one product gives both.
void JunctionStep::packOutput (int output) noexcept
{
    const auto& c = cayley_.c();
    const auto through = [&] (const StateSpace::Matrix& matrix, int column)
    {
        double sum = 0.0;
        for (int state = 0; state < stateCount_; ++state)
            sum += c (output, state) * matrix (state, column);
        return sum;
    };
    const int firstPort = sourceCount_ - portCount_;
    for (int source = 0; source < sourceCount_; ++source)
    {
        product_.set (output, source, through (cayley_.fromLast(), source));
        const double present = through (cayley_.fromPresent(), source) + cayley_.d() (output, source);
        if (source < firstPort)
            product_.set (output, sourceCount_ + source, present);
        else
            response_ (output, source - firstPort) = present;
    }
    for (int column = 0; column < stateCount_; ++column)
        product_.set (output, 2 * sourceCount_ - portCount_ + column, through (cayley_.transition(), column));
}

void JunctionStep::packState (int state) noexcept
{
    const int row = outputCount_ + state;
    const int firstPort = sourceCount_ - portCount_;
    for (int source = 0; source < sourceCount_; ++source)
    {
        product_.set (row, source, cayley_.fromLast() (state, source));
        if (source < firstPort)
            product_.set (row, sourceCount_ + source, cayley_.fromPresent() (state, source));
        else
            response_ (row, source - firstPort) = cayley_.fromPresent() (state, source);
    }
    for (int column = 0; column < stateCount_; ++column)
        product_.set (row, 2 * sourceCount_ - portCount_ + column, cayley_.transition() (state, column));
}

void JunctionStep::predict (const double* states,
                            const double* lastSources,
                            const double* present,
                            double* frame) noexcept
{
    std::copy_n (lastSources, sourceCount_, drive_.data());
    std::copy_n (present, sourceCount_ - portCount_, drive_.data() + sourceCount_);
    product_.multiply (drive_.data(), states, frame);
}

// With J = (I - hA/2)^-1: transition = 2J - I, fromLast + fromPresent = hJB, fromPresent - fromLast = 2 J B_dot.
void JunctionStep::predictHalf (const double* states,
                                const double* from,
                                const double* to,
                                double* frame) const noexcept
{
    double* next = frame + outputCount_;
    for (int row = 0; row < stateCount_; ++row)
    {
        double sum = 0.5 * states[row];
        for (int column = 0; column < stateCount_; ++column)
            sum += 0.5 * cayley_.transition() (row, column) * states[column];
        for (int source = 0; source < sourceCount_; ++source)
        {
            const double last = cayley_.fromLast() (row, source);
            const double present = cayley_.fromPresent() (row, source);
            sum += 0.5 * (present + last) * to[source] + 0.5 * (present - last) * (to[source] - from[source]);
        }
        next[row] = sum;
    }
    instant (next, to, frame);
}

void JunctionStep::instant (const double* states, const double* sources, double* outputs) const noexcept
{
    for (int output = 0; output < outputCount_; ++output)
    {
        double sum = 0.0;
        for (int state = 0; state < stateCount_; ++state)
            sum += cayley_.c() (output, state) * states[state];
        for (int source = 0; source < sourceCount_; ++source)
            sum += cayley_.d() (output, source) * sources[source];
        outputs[output] = sum;
    }
}

} // namespace stopwright
