// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/StateSpaceBuilder.h"

#include "Circuit/Elimination.h"
#include "Circuit/NetworkEquations.h"
#include "Circuit/ReductionPlan.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

std::size_t at (int index) noexcept
{
    return static_cast<std::size_t> (index);
}

/// positions[old] for the order old = order[position].
std::vector<int> inverted (const std::vector<int>& order)
{
    std::vector<int> positions (order.size());
    for (std::size_t k = 0; k < order.size(); ++k)
        positions[at (order[k])] = static_cast<int> (k);
    return positions;
}

void append (std::vector<int>& order, const std::vector<int>& indices, int offset)
{
    for (const int index : indices)
        order.push_back (index + offset);
}

void appendRange (std::vector<int>& order, int first, int end)
{
    for (int index = first; index < end; ++index)
        order.push_back (index);
}

} // namespace

StateSpaceBuilder::StateSpaceBuilder (const Netlist& netlist,
                                      const std::vector<std::string>& outputNodes,
                                      const std::vector<std::string>& injectedNodes)
    : knobs_ (netlist)
{
    NetworkBranches branches (netlist, knobs_);
    for (const auto& node : injectedNodes)
        branches.addInjection (node);
    const NetworkEquations equations (branches, outputNodes);
    fault_ = equations.fault();
    if (fault_)
        return;
    const ReductionPlan reduction (equations);
    fault_ = reduction.fault;
    if (reduction.faultyOutput >= 0)
        fault_.subject = at (reduction.faultyOutput) < outputNodes.size()
                             ? outputNodes[at (reduction.faultyOutput)]
                             : branches.ports[at (reduction.faultyOutput) - outputNodes.size()].name;
    if (fault_)
        return;

    plan (equations, reduction);
    auto trial = makeStateSpace();
    if (! build (knobs_.values(), trial))
        fault_ = { NetworkFault::Kind::valuesTooFarApart, {}, {} };
}

void StateSpaceBuilder::plan (const NetworkEquations& equations, const ReductionPlan& reduction)
{
    pivotCount_ = static_cast<int> (reduction.pivotRows.size());
    dependentCount_ = static_cast<int> (reduction.dependentStates.size());
    stateCount_ = static_cast<int> (reduction.independentStates.size());
    sourceCount_ = equations.sourceCount();
    outputCount_ = equations.outputCount();

    // Columns [pivots | dependent states | free unknowns | states | sources]: eliminating the first two groups from
    // the front leaves each state's row in free unknowns, states and sources alone.
    const int firstState = equations.unknownCount();
    std::vector<int> columnOrder = reduction.pivotColumns;
    append (columnOrder, reduction.dependentStates, firstState);
    append (columnOrder, reduction.freeColumns, 0);
    append (columnOrder, reduction.independentStates, firstState);
    appendRange (columnOrder, equations.firstSourceColumn(), equations.columnCount());

    std::vector<int> rowOrder = reduction.pivotRows;
    append (rowOrder, reduction.constraintRows, 0);
    append (rowOrder, reduction.independentStates, firstState);
    append (rowOrder, reduction.dependentStates, firstState);
    appendRange (rowOrder, equations.firstSourceColumn(), equations.rowCount());

    const int allStates = stateCount_ + dependentCount_;
    fixed_ = PaddedTable (equations.rowCount(), equations.columnCount());
    rate_ = PaddedTable (allStates, allStates + sourceCount_);
    solve_ = PaddedTable (allStates + outputCount_, allStates + stateCount_ + 2 * sourceCount_);
    scales_.resize (at (std::max (equations.unknownCount(), allStates)));
    placeStamps (equations, inverted (rowOrder), inverted (columnOrder));

    std::vector<int> quantityOrder;
    append (quantityOrder, reduction.independentStates, firstState);
    append (quantityOrder, reduction.dependentStates, firstState);
    appendRange (quantityOrder, equations.firstSourceColumn(), equations.columnCount());
    nameQuantities (equations, quantityOrder);
}

void StateSpaceBuilder::placeStamps (const NetworkEquations& equations,
                                     const std::vector<int>& rowPositions,
                                     const std::vector<int>& columnPositions)
{
    const int firstState = equations.unknownCount();
    const int firstStateRow = pivotCount_ + dependentCount_;
    const int firstStateColumn = pivotCount_ + 2 * dependentCount_;

    // In the rate table the dependent states' columns stand behind the others instead of in front.
    const auto place = [&] (const NetworkEquations::Stamp& stamp)
    {
        const int row = rowPositions[at (stamp.row + (stamp.isRate ? firstState : 0))];
        const int column = columnPositions[at (stamp.column + (stamp.isRate ? firstState : 0))];
        if (! stamp.isRate)
            return row * fixed_.stride() + column;
        int rateColumn = column - firstStateColumn;
        if (rateColumn < 0)
            rateColumn = stateCount_ + column - pivotCount_;
        else if (rateColumn >= stateCount_)
            rateColumn += dependentCount_;
        return (row - firstStateRow) * rate_.stride() + rateColumn;
    };

    for (const auto& stamp : equations.stamps())
        if (stamp.element < 0)
            (stamp.isRate ? rate_ : fixed_).data()[place (stamp)] += stamp.weight;
    constants_.assign (fixed_.data(), fixed_.row (fixed_.rows()));
    rateConstants_.assign (rate_.data(), rate_.row (rate_.rows()));

    for (std::size_t index = 0; index < equations.elements().size(); ++index)
    {
        const auto& value = equations.elements()[index];
        Element element { value, static_cast<int> (stamps_.size()), 0, false };
        for (const auto& stamp : equations.stamps())
        {
            if (stamp.element != static_cast<int> (index))
                continue;
            element.isRate = stamp.isRate;
            stamps_.push_back ({ place (stamp), stamp.weight });
        }
        element.stampEnd = static_cast<int> (stamps_.size());
        elements_.push_back (element);
    }
}

void StateSpaceBuilder::nameQuantities (const NetworkEquations& equations, const std::vector<int>& columnOrder)
{
    std::vector<int> positions (at (equations.columnCount()), -1);
    for (std::size_t k = 0; k < columnOrder.size(); ++k)
        positions[at (columnOrder[k])] = static_cast<int> (k);

    const auto& all = equations.quantities();
    const auto take = [&] (std::size_t index)
    {
        LinearForm form;
        for (const auto& term : all[index].form.terms())
            form.add (positions[at (term.index)], term.weight);
        quantities_.push_back ({ all[index].name, all[index].value.knob, form });
    };
    for (int k = 0; k < equations.stateCount(); ++k)
        take (at (columnOrder[at (k)] - equations.unknownCount()));
    for (std::size_t index = at (equations.stateCount()); index < all.size(); ++index)
        take (index);
}

void StateSpaceBuilder::fill (std::span<const double> knobValues) noexcept
{
    std::copy (constants_.begin(), constants_.end(), fixed_.data());
    std::copy (rateConstants_.begin(), rateConstants_.end(), rate_.data());

    for (const auto& element : elements_)
    {
        const double value = valueOf (element.value, knobValues);
        double* table = element.isRate ? rate_.data() : fixed_.data();
        for (int k = element.firstStamp; k < element.stampEnd; ++k)
            table[stamps_[at (k)].position] += stamps_[at (k)].weight * value;
    }
}

bool StateSpaceBuilder::reduce() noexcept
{
    const Elimination unknowns { 0, 0, pivotCount_ };
    const Elimination constraints { pivotCount_, pivotCount_, dependentCount_ };
    return unknowns.forward (fixed_, scales_) && constraints.complete (fixed_, scales_);
}

// Row `state` of [E + E_d R, -F_free | G, H | -(S + E_d R_u)], where -R stands in the constraint rows.
void StateSpaceBuilder::assembleRow (int state) noexcept
{
    const int firstKnown = pivotCount_ + 2 * dependentCount_;
    const int allStates = stateCount_ + dependentCount_;
    double* target = solve_.row (state);
    double* sourceRates = target + allStates + stateCount_ + sourceCount_;
    const double* rates = rate_.row (state);
    const double* known = fixed_.row (pivotCount_ + dependentCount_ + state);

    std::copy_n (rates, stateCount_, target);
    std::copy_n (known + firstKnown, stateCount_ + sourceCount_, target + allStates);
    for (int source = 0; source < sourceCount_; ++source)
        sourceRates[source] = -rates[allStates + source];

    for (int k = 0; k < dependentCount_; ++k)
    {
        target[stateCount_ + k] = -known[pivotCount_ + dependentCount_ + k];
        const double rate = rates[stateCount_ + k];
        const double* constraint = fixed_.row (pivotCount_ + k) + firstKnown;
        for (int j = 0; j < stateCount_; ++j)
            target[j] -= rate * constraint[j];
        for (int source = 0; source < sourceCount_; ++source)
            sourceRates[source] += rate * constraint[stateCount_ + source];
    }
}

void StateSpaceBuilder::assembleRates() noexcept
{
    const int allStates = stateCount_ + dependentCount_;
    const int firstKnown = pivotCount_ + 2 * dependentCount_;
    for (int state = 0; state < allStates; ++state)
        assembleRow (state);
    for (int output = 0; output < outputCount_; ++output)
    {
        double* target = solve_.row (allStates + output);
        const double* known = fixed_.row (pivotCount_ + dependentCount_ + allStates + output);
        std::fill_n (target, solve_.stride(), 0.0);
        for (int k = 0; k < dependentCount_; ++k)
            target[stateCount_ + k] = -known[pivotCount_ + dependentCount_ + k];
        std::copy_n (known + firstKnown, stateCount_ + sourceCount_, target + allStates);
    }
}

bool StateSpaceBuilder::build (std::span<const double> knobValues, StateSpace& result) noexcept
{
    fill (knobValues);
    if (! reduce())
        return false;
    assembleRates();
    const Elimination rates { 0, 0, stateCount_ + dependentCount_ };
    return rates.complete (solve_, scales_) && write (result);
}

bool StateSpaceBuilder::write (StateSpace& result) const noexcept
{
    const int allStates = stateCount_ + dependentCount_;
    double sum = 0.0;
    const auto copy = [&sum] (const double* from, int count, double* to)
    {
        for (int k = 0; k < count; ++k)
        {
            to[k] = from[k];
            sum += from[k];
        }
    };
    for (int state = 0; state < stateCount_; ++state)
    {
        const double* row = solve_.row (state) + allStates;
        copy (row, stateCount_, rowOf (result.a, state));
        copy (row + stateCount_, sourceCount_, rowOf (result.b, state));
        copy (row + stateCount_ + sourceCount_, sourceCount_, rowOf (result.bDot, state));
    }
    for (int output = 0; output < outputCount_; ++output)
    {
        const double* row = solve_.row (allStates + output) + allStates;
        copy (row, stateCount_, rowOf (result.c, output));
        copy (row + stateCount_, sourceCount_, rowOf (result.d, output));
    }
    const int firstKnown = pivotCount_ + 2 * dependentCount_;
    for (int k = 0; k < dependentCount_; ++k)
        for (int j = 0; j < stateCount_ + sourceCount_; ++j)
            result.dependent (k, j) = -fixed_.row (pivotCount_ + k)[firstKnown + j];
    return std::isfinite (sum);
}

} // namespace stopwright
