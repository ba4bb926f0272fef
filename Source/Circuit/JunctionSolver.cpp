// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/JunctionSolver.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stopwright
{

namespace
{

std::size_t at (int index) noexcept
{
    return static_cast<std::size_t> (index);
}

/// Gaussian elimination with partial pivoting in place; `right` becomes the solution. False when a pivot is zero or not
/// finite.
bool eliminate (StateSpace::Matrix& table, std::vector<double>& right) noexcept
{
    const int size = static_cast<int> (table.rows());
    for (int column = 0; column < size; ++column)
    {
        int pivot = column;
        for (int row = column + 1; row < size; ++row)
            if (std::abs (table (row, column)) > std::abs (table (pivot, column)))
                pivot = row;
        const double largest = std::abs (table (pivot, column));
        if (! (largest > 0.0) || ! std::isfinite (largest))
            return false;
        if (pivot != column)
        {
            std::swap_ranges (rowOf (table, pivot), rowOf (table, pivot) + size, rowOf (table, column));
            std::swap (right[at (pivot)], right[at (column)]);
        }
        for (int row = column + 1; row < size; ++row)
        {
            const double factor = table (row, column) / table (column, column);
            if (factor == 0.0)
                continue;
            for (int other = column + 1; other < size; ++other)
                table (row, other) -= factor * table (column, other);
            right[at (row)] -= factor * right[at (column)];
        }
    }
    for (int row = size - 1; row >= 0; --row)
    {
        double sum = right[at (row)];
        for (int column = row + 1; column < size; ++column)
            sum -= table (row, column) * right[at (column)];
        right[at (row)] = sum / table (row, row);
    }
    return true;
}

} // namespace

JunctionSolver::JunctionSolver (JunctionBank bank)
    : bank_ (std::move (bank)),
      volts_ (at (count()), 0.0),
      excess_ (volts_),
      right_ (volts_),
      steps_ (volts_),
      goodVolts_ (volts_),
      goodExcess_ (volts_),
      slopes_ (at (count())),
      goodSlopes_ (slopes_),
      table_ (StateSpace::Matrix::Zero (count(), count()))
{}

JunctionPorts JunctionSolver::makePorts() const
{
    return { StateSpace::Matrix::Zero (count(), count()), std::vector<double> (at (count()), 0.0) };
}

// What a transistor's junction lets through returns through its partner, all but the base current.
void JunctionSolver::placeKnees (JunctionPorts& ports) const noexcept
{
    for (int junction = 0; junction < count(); ++junction)
    {
        const int partner = bank_.partnerOf (junction);
        const double ohms =
            ports.impedance (junction, junction) - (partner < 0 ? 0.0 : ports.impedance (junction, partner));
        ports.knees[at (junction)] = bank_.lawOf (junction).kneeVolts (ohms);
    }
}

void JunctionSolver::start (std::span<const double> volts) noexcept
{
    std::copy_n (volts.begin(), std::min (volts.size(), volts_.size()), volts_.begin());
}

void JunctionSolver::settleAt (std::span<const double> volts) noexcept
{
    start (volts);
    bank_.evaluate (volts_.data(), excess_.data(), slopes_.data());
    keepAsGood();
}

void JunctionSolver::keepAsGood() noexcept
{
    std::copy (volts_.begin(), volts_.end(), goodVolts_.begin());
    std::copy (excess_.begin(), excess_.end(), goodExcess_.begin());
    std::copy (slopes_.begin(), slopes_.end(), goodSlopes_.begin());
}

// (I - Z S) steps = right
bool JunctionSolver::solveSteps (const StateSpace::Matrix& z, const double* right) noexcept
{
    const int size = count();
    if (size == 1)
    {
        steps_[0] = right[0] / (1.0 - z (0, 0) * slopes_[0].own);
        return std::isfinite (steps_[0]);
    }
    for (int row = 0; row < size; ++row)
    {
        const double* impedance = z.data() + row * z.cols();
        double* target = rowOf (table_, row);
        for (int column = 0; column < size; ++column)
        {
            target[column] = (row == column ? 1.0 : 0.0) - impedance[column] * slopes_[at (column)].own;
            if (const int partner = bank_.partnerOf (column); partner >= 0)
                target[column] -= impedance[partner] * slopes_[at (partner)].cross;
        }
        steps_[at (row)] = right[row];
    }
    return eliminate (table_, steps_)
           && std::all_of (steps_.begin(), steps_.end(), [] (double step) { return std::isfinite (step); });
}

bool JunctionSolver::step (const double* open, const StateSpace::Matrix& z, double shuntSiemens) noexcept
{
    const int size = count();
    bank_.evaluate (volts_.data(), excess_.data(), slopes_.data());
    for (int junction = 0; junction < size; ++junction)
    {
        excess_[at (junction)] += shuntSiemens * volts_[at (junction)];
        slopes_[at (junction)].own += shuntSiemens;
    }
    return stepFrom (volts_, open, z);
}

/// The step that excess_ and slopes_, which belong to `volts`, lead to.
bool JunctionSolver::stepFrom (const std::vector<double>& volts,
                               const double* open,
                               const StateSpace::Matrix& z) noexcept
{
    for (int row = 0; row < count(); ++row)
    {
        double sum = open[row] - volts[at (row)];
        for (int column = 0; column < count(); ++column)
            sum += z (row, column) * excess_[at (column)];
        right_[at (row)] = sum;
    }
    return solveSteps (z, right_.data());
}

/// What the step in the volts adds to a junction's current, to first order.
double JunctionSolver::alongTangent (int junction) const noexcept
{
    const int partner = bank_.partnerOf (junction);
    const double crossed = partner < 0 ? 0.0 : slopes_[at (junction)].cross * steps_[at (partner)];
    return slopes_[at (junction)].own * steps_[at (junction)] + crossed;
}

void JunctionSolver::followTangent() noexcept
{
    for (int junction = 0; junction < count(); ++junction)
        excess_[at (junction)] += alongTangent (junction);
}

/// Takes the step as far as the limits allow; true when it was small and whole.
bool JunctionSolver::advance (const std::vector<double>& knees) noexcept
{
    bool isDone = true;
    double furthest = 0.0;
    for (int junction = 0; junction < count(); ++junction)
    {
        const double last = volts_[at (junction)];
        const double next = last + steps_[at (junction)];
        const double taken = bank_.lawOf (junction).limited (next, last, knees[at (junction)]);
        const double distance = std::abs (steps_[at (junction)]);
        isDone = isDone && taken == next && distance <= toleranceVolts + 1e-12 * std::abs (next);
        if (distance > furthest)
        {
            furthest = distance;
            restless_ = junction;
        }
        right_[at (junction)] = taken;
    }
    if (isDone)
        followTangent();
    volts_.swap (right_);
    return isDone;
}

bool JunctionSolver::solve (const double* open, const JunctionPorts& ports, int mostSteps, double shuntSiemens) noexcept
{
    if (volts_.empty())
        return true;
    for (int taken = 0; taken < mostSteps && step (open, ports.impedance, shuntSiemens); ++taken)
        if (advance (ports.knees))
        {
            keepAsGood();
            return true;
        }
    fallBack (open, ports.impedance);
    return false;
}

void JunctionSolver::fallBack (const double* open, const StateSpace::Matrix& z) noexcept
{
    std::copy (goodExcess_.begin(), goodExcess_.end(), excess_.begin());
    std::copy (goodSlopes_.begin(), goodSlopes_.end(), slopes_.begin());
    if (stepFrom (goodVolts_, open, z))
        followTangent();
    if (! std::all_of (volts_.begin(), volts_.end(), [] (double volts) { return std::isfinite (volts); }))
        std::copy (goodVolts_.begin(), goodVolts_.end(), volts_.begin());
}

void JunctionSolver::follow (const double* openChange, const JunctionPorts& ports, double* excessChange) noexcept
{
    const bool hasStep = ! volts_.empty() && solveSteps (ports.impedance, openChange);
    for (int junction = 0; junction < count(); ++junction)
        excessChange[junction] = hasStep ? alongTangent (junction) : 0.0;
}

} // namespace stopwright
