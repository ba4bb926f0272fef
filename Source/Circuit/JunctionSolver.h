// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/JunctionBank.h"
#include "Circuit/StateSpace.h"

#include <span>
#include <vector>

namespace stopwright
{

/// Finds the volts v of all junctions with v = open + Z e (v), where the linear rest of the network shows `open` while
/// no junction carries more than junctionSiemens v, Z is its port matrix and e the excess currents of the laws.
///
/// Newton's method in the volts, each step limited along the exponentials, from where the volts stand (warm start).
/// The currents handed out lie on the tangent of the last step, so that the network's equations hold to rounding; they
/// are off the law by (tolerance / 2 n Vt)^2 relative at most, about 1e-12.
/// Threading: construct on [control], the rest on [audio] without allocation or lock; time bounded by mostSteps.
class JunctionSolver
{
public:
    static constexpr double toleranceVolts = 1e-7;

    explicit JunctionSolver (JunctionBank bank);

    const JunctionBank& bank() const noexcept { return bank_; }

    int count() const noexcept { return bank_.count(); }

    /// Where the search starts.
    void start (std::span<const double> volts) noexcept;

    /// `z` is count() by count(). With `shuntSiemens` every junction has that much in parallel besides.
    /// Returns false when mostSteps did not do. The volts are then where they were before, and the currents what the
    /// junctions carry along the tangents there: a linear network's answer, finite unless `open` is not, or, where even
    /// that has none, the currents there themselves.
    bool solve (const double* open, const StateSpace::Matrix& z, int mostSteps, double shuntSiemens = 0.0) noexcept;

    std::span<const double> volts() const noexcept { return volts_; }

    std::span<const double> excessAmps() const noexcept { return excess_; }

    /// Slopes of the laws where the search ended, `own` without junctionSiemens.
    std::span<const JunctionSlope> slopes() const noexcept { return slopes_; }

    /// How the excess currents follow when `open` moves by `openChange`, all slopes as they stand after solve.
    void follow (const double* openChange, const StateSpace::Matrix& z, double* excessChange) noexcept;

    /// The junction whose volts moved most in the last step taken, for sentences.
    int restless() const noexcept { return restless_; }

private:
    bool step (const double* open, const StateSpace::Matrix& z, double shuntSiemens) noexcept;
    bool solveSteps (const StateSpace::Matrix& z, const double* right) noexcept;
    double alongTangent (int junction) const noexcept;
    void keepTangent() noexcept;
    bool advance() noexcept;

    JunctionBank bank_;
    std::vector<double> volts_, excess_, right_, steps_, startVolts_, startExcess_, tangents_;
    std::vector<JunctionSlope> slopes_, startSlopes_;
    StateSpace::Matrix table_;
    int restless_ = 0;
};

} // namespace stopwright
