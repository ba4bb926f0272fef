// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/AlignedNumbers.h"
#include "Circuit/PackedProduct.h"
#include "Circuit/PaddedTable.h"
#include "Circuit/StateSpace.h"

#include <vector>

namespace stopwright
{

/// The time step of a state space, in physical states (bilinear transform, trapezoidal rule, implicit midpoint):
///   x1 = (I - hA/2)^-1 ((I + hA/2) x0 + hB/2 (u0 + u1) + B_dot (u1 - u0)),  y1 = C x1 + D u1.
/// H_digital(w) = H_analogue (j (2/h) tan (w/2)) exactly, and since both brackets use the same A, a change of values
/// between steps adds no energy to a passive network, which the form that stores x + (h/2) x' does not promise.
/// Threading: construct on [control], the rest on [audio] without allocation or lock.
/// Source: Hairer, Wanner, "Solving ordinary differential equations II", 1996, IV.12 (AN-stability); from memory.
class CayleyStep
{
public:
    CayleyStep (int states, int sources, int outputs, double sampleRateHz);

    /// Takes new matrices. Returns false, and keeps the old ones, when they give no finite step.
    bool build (const StateSpace& network) noexcept;

    /// Runs `frameCount` samples from `offset` on. `states` and `lastSources` hold x0 and u0 and are moved on.
    void run (double* states,
              double* lastSources,
              const double* const* sources,
              double* const* outputs,
              int offset,
              int frameCount) noexcept;

    /// One sample as two backward Euler half steps with the same factor, which forget in one sample what a sudden
    /// change of values puts into stiff modes; the plain step would let it ring at half the sample rate.
    /// Source: Marti, Lin, "Suppression of numerical oscillations in the EMTP", IEEE Trans. Power Systems 4(2), 1989.
    void runDamped (double* states,
                    double* lastSources,
                    const double* const* sources,
                    double* const* outputs,
                    int offset) noexcept;

    /// x1 = transition x0 + fromLast u0 + fromPresent u1, y1 = c x1 + d u1.
    const StateSpace::Matrix& transition() const noexcept { return transition_; }

    const StateSpace::Matrix& fromLast() const noexcept { return fromLast_; }

    const StateSpace::Matrix& fromPresent() const noexcept { return fromPresent_; }

    const StateSpace::Matrix& c() const noexcept { return c_; }

    const StateSpace::Matrix& d() const noexcept { return d_; }

private:
    void assemble (const StateSpace& network) noexcept;
    bool take (const StateSpace& network) noexcept;
    void pack() noexcept;
    void packOutput (int output) noexcept;
    void halfStep (const double* from, const double* sourcesFrom, const double* sourcesTo, double* to) const noexcept;

    int stateCount_ = 0, sourceCount_ = 0, outputCount_ = 0;
    double halfPeriodSeconds_ = 0.0;
    StateSpace::Matrix transition_, fromLast_, fromPresent_, c_, d_;
    PaddedTable solve_;
    std::vector<double> scales_;
    PackedProduct product_;     ///< [y1; x1] from the sources' (u0, u1) and x0
    std::vector<double> drive_; ///< (u0, u1) of every source
    AlignedNumbers results_;    ///< two, in turn
};

} // namespace stopwright
