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
      startVolts_ (volts_),
      startExcess_ (volts_),
      tangents_ (volts_),
      slopes_ (at (count())),
      startSlopes_ (slopes_),
      table_ (StateSpace::Matrix::Zero (count(), count()))
{}

void JunctionSolver::start (std::span<const double> volts) noexcept
{
    std::copy_n (volts.begin(), std::min (volts.size(), volts_.size()), volts_.begin());
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
    for (int row = 0; row < size; ++row)
    {
        double sum = open[row] - volts_[at (row)];
        for (int column = 0; column < size; ++column)
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

void JunctionSolver::keepTangent() noexcept
{
    for (int junction = 0; junction < count(); ++junction)
        tangents_[at (junction)] = excess_[at (junction)] + alongTangent (junction);
}

/// Takes the step as far as the limits allow; true when it was small and whole.
bool JunctionSolver::advance() noexcept
{
    bool isDone = true;
    double furthest = 0.0;
    for (int junction = 0; junction < count(); ++junction)
    {
        const double last = volts_[at (junction)];
        const double next = last + steps_[at (junction)];
        const double taken = bank_.limited (junction, next, last);
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
    {
        keepTangent();
        excess_.swap (tangents_);
    }
    volts_.swap (right_);
    return isDone;
}

bool JunctionSolver::solve (const double* open,
                            const StateSpace::Matrix& z,
                            int mostSteps,
                            double shuntSiemens) noexcept
{
    if (volts_.empty())
        return true;
    std::copy (volts_.begin(), volts_.end(), startVolts_.begin());
    for (int taken = 0; taken < mostSteps; ++taken)
    {
        const bool hasStep = step (open, z, shuntSiemens);
        if (taken == 0)
        {
            std::copy (excess_.begin(), excess_.end(), startExcess_.begin());
            std::copy (slopes_.begin(), slopes_.end(), startSlopes_.begin());
            if (hasStep)
            {
                keepTangent();
                startExcess_.swap (tangents_);
            }
        }
        if (! hasStep)
            break;
        if (advance())
            return true;
    }
    volts_.swap (startVolts_);
    excess_.swap (startExcess_);
    slopes_.swap (startSlopes_);
    return false;
}

void JunctionSolver::follow (const double* openChange, const StateSpace::Matrix& z, double* excessChange) noexcept
{
    const bool hasStep = ! volts_.empty() && solveSteps (z, openChange);
    for (int junction = 0; junction < count(); ++junction)
        excessChange[junction] = hasStep ? alongTangent (junction) : 0.0;
}

} // namespace stopwright
