// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/CayleyStep.h"

#include <algorithm>

namespace stopwright
{

/// The numbers of a block of L steps of a CayleyStep, whatever table they are kept in.
///
/// With s = x - fromPresent u the step becomes s[n] = T s[n-1] + K u[n-1], y[n] = C s[n] + F u[n], where T = transition,
/// K = T fromPresent + fromLast, F = C fromPresent + D. So u[j] is heard in y[n] through C T^(n-1-j) K and kept in s[L]
/// through T^(L-1-j) K, u[n] is heard in y[n] through F, and s[0] is heard through C T^n and kept through T^L.
/// Threading: construct on [control], place on [audio] without allocation or lock.
/// Source: Burrus, "Block realization of digital filters", IEEE Trans. Audio Electroacoustics 20(4), 1972.
class BlockEntries
{
public:
    /// `length` is a power of two.
    BlockEntries (int states, int sources, int outputs, int length)
        : length_ (length),
          kept_ (Matrix::Zero (states, sources)),
          nextKept_ (Matrix::Zero (states, sources)),
          heard_ (Matrix::Zero (outputs, states)),
          nextHeard_ (Matrix::Zero (outputs, states)),
          direct_ (Matrix::Zero (outputs, sources)),
          power_ (Matrix::Zero (states, states)),
          nextPower_ (Matrix::Zero (states, states))
    {}

    /// Gives every number to `table`, which has
    ///   hearSource (sample, output, ofSample, source, weight)   y[sample] += weight u[ofSample]
    ///   keepSource (state, ofSample, source, weight)            s[L] += weight u[ofSample]
    ///   hearState (sample, output, state, weight)               y[sample] += weight s[0]
    ///   keepState (state, ofState, weight)                      s[L] += weight s[0]
    /// with samples 1 .. L for y and 0 .. L for u.
    template <typename Table>
    void place (const CayleyStep& step, Table& table) noexcept
    {
        placeSources (step, table);
        placeHeardStates (step, table);
        placeKeptStates (step, table);
    }

private:
    using Matrix = StateSpace::Matrix;

    template <typename Table>
    void placeSources (const CayleyStep& step, Table& table) noexcept
    {
        kept_ = step.fromLast();
        kept_.noalias() += step.transition().lazyProduct (step.fromPresent());
        direct_ = step.d();
        direct_.noalias() += step.c().lazyProduct (step.fromPresent());

        for (int age = 0; age <= length_; ++age)
        {
            for (int sample = std::max (age, 1); sample <= length_; ++sample)
                for (int output = 0; output < direct_.rows(); ++output)
                    for (int source = 0; source < direct_.cols(); ++source)
                        table.hearSource (sample, output, sample - age, source, direct_ (output, source));
            if (age == length_)
                break;
            for (int state = 0; state < kept_.rows(); ++state)
                for (int source = 0; source < kept_.cols(); ++source)
                    table.keepSource (state, length_ - 1 - age, source, kept_ (state, source));
            direct_.noalias() = step.c().lazyProduct (kept_);
            nextKept_.noalias() = step.transition().lazyProduct (kept_);
            kept_.swap (nextKept_);
        }
    }

    template <typename Table>
    void placeHeardStates (const CayleyStep& step, Table& table) noexcept
    {
        heard_ = step.c();
        for (int sample = 1; sample <= length_; ++sample)
        {
            nextHeard_.noalias() = heard_.lazyProduct (step.transition());
            heard_.swap (nextHeard_);
            for (int output = 0; output < heard_.rows(); ++output)
                for (int state = 0; state < heard_.cols(); ++state)
                    table.hearState (sample, output, state, heard_ (output, state));
        }
    }

    /// T^L takes squarings only: L is a power of two.
    template <typename Table>
    void placeKeptStates (const CayleyStep& step, Table& table) noexcept
    {
        power_ = step.transition();
        for (int exponent = 1; exponent < length_; exponent *= 2)
        {
            nextPower_.noalias() = power_.lazyProduct (power_);
            power_.swap (nextPower_);
        }
        for (int row = 0; row < power_.rows(); ++row)
            for (int column = 0; column < power_.cols(); ++column)
                table.keepState (row, column, power_ (row, column));
    }

    int length_;
    Matrix kept_, nextKept_;   ///< T^k K
    Matrix heard_, nextHeard_; ///< C T^k
    Matrix direct_;            ///< F, then C T^k K
    Matrix power_, nextPower_; ///< T^k
};

} // namespace stopwright
