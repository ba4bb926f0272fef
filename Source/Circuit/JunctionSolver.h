// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/JunctionBank.h"
#include "Circuit/StateSpace.h"

#include <span>
#include <vector>

namespace stopwright
{

/// How the linear rest of a network looks to its junctions.
struct JunctionPorts
{
    StateSpace::Matrix impedance; ///< Z: volts of each from the excess amps of each
    std::vector<double> knees;    ///< see JunctionLaw::kneeVolts
};

/// Finds the volts v of all junctions with v = open + Z e (v), where the linear rest of the network shows `open` while
/// no junction carries more than junctionSiemens v, Z is its port matrix and e the excess currents of the laws.
///
/// Newton's method from where the volts stand (warm start), in the volts below a junction's knee and in its current
/// above.
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

    /// The same, and these volts count as a solution.
    void settleAt (std::span<const double> volts) noexcept;

    /// Ports of the right sizes, all zero. Threading: [control].
    JunctionPorts makePorts() const;

    /// Works out the knees for an impedance.
    void placeKnees (JunctionPorts& ports) const noexcept;

    /// With `shuntSiemens` every junction has that much in parallel besides.
    /// Returns false when mostSteps did not do. The volts are then where the search got to, so that it can go on in the
    /// next sample; the currents are what the junctions carry along the tangents of the last solution that was found: a
    /// linear network's answer, finite unless `open` is not.
    bool solve (const double* open, const JunctionPorts& ports, int mostSteps, double shuntSiemens = 0.0) noexcept;

    std::span<const double> volts() const noexcept { return volts_; }

    std::span<const double> excessAmps() const noexcept { return excess_; }

    /// Slopes of the laws where the search ended, `own` without junctionSiemens.
    std::span<const JunctionSlope> slopes() const noexcept { return slopes_; }

    /// How the excess currents follow when `open` moves by `openChange`, all slopes as they stand after solve.
    void follow (const double* openChange, const JunctionPorts& ports, double* excessChange) noexcept;

    /// The junction whose volts moved most in the last step taken, for sentences.
    int restless() const noexcept { return restless_; }

private:
    bool step (const double* open, const StateSpace::Matrix& z, double shuntSiemens) noexcept;
    bool solveSteps (const StateSpace::Matrix& z, const double* right) noexcept;
    double alongTangent (int junction) const noexcept;
    bool stepFrom (const std::vector<double>& volts, const double* open, const StateSpace::Matrix& z) noexcept;
    void followTangent() noexcept;
    void keepAsGood() noexcept;
    void fallBack (const double* open, const StateSpace::Matrix& z) noexcept;
    bool advance (const std::vector<double>& knees) noexcept;

    JunctionBank bank_;
    std::vector<double> volts_, excess_, right_, steps_, goodVolts_, goodExcess_;
    std::vector<JunctionSlope> slopes_, goodSlopes_;
    StateSpace::Matrix table_;
    int restless_ = 0;
};

} // namespace stopwright
