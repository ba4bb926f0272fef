// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ReductionPlan.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <random>

namespace stopwright
{

namespace
{

/// Generic numbers are near one, so what is structurally zero comes out near 1e-16 and what is not well above this.
constexpr double rankTolerance = 1e-9;

struct Tables
{
    Eigen::MatrixXd fixed; ///< static table
    Eigen::MatrixXd rate;
};

Tables genericTables (const NetworkEquations& equations)
{
    std::mt19937_64 random (1);
    std::vector<double> values (equations.elements().size());
    for (auto& value : values)
        value = std::exp2 (static_cast<double> (random() >> 11U) * 0x1p-52 - 1.0);

    Tables tables;
    tables.fixed.setZero (equations.rowCount(), equations.columnCount());
    tables.rate.setZero (equations.stateCount(), equations.stateCount() + equations.sourceCount());
    for (const auto& stamp : equations.stamps())
    {
        const double value = stamp.element < 0 ? 1.0 : values[static_cast<std::size_t> (stamp.element)];
        (stamp.isRate ? tables.rate : tables.fixed) (stamp.row, stamp.column) += stamp.weight * value;
    }
    return tables;
}

/// Gauss-Jordan elimination with complete pivoting among `rows` and `columns`, which lose each pivot they give; all
/// other rows are cleared too. Returns the pivots (row, column) in order.
std::vector<std::pair<int, int>> eliminate (Eigen::MatrixXd& table, std::vector<int>& rows, std::vector<int>& columns)
{
    std::vector<std::pair<int, int>> pivots;
    while (! rows.empty() && ! columns.empty())
    {
        auto bestRow = rows.begin();
        auto bestColumn = columns.begin();
        for (auto row = rows.begin(); row != rows.end(); ++row)
            for (auto column = columns.begin(); column != columns.end(); ++column)
                if (std::abs (table (*row, *column)) > std::abs (table (*bestRow, *bestColumn)))
                {
                    bestRow = row;
                    bestColumn = column;
                }
        const auto pivot = std::pair (*bestRow, *bestColumn);
        if (std::abs (table (pivot.first, pivot.second)) < rankTolerance)
            break;
        rows.erase (bestRow);
        columns.erase (bestColumn);
        table.row (pivot.first) /= table (pivot.first, pivot.second);
        for (int row = 0; row < table.rows(); ++row)
            if (row != pivot.first)
                table.row (row) -= Eigen::RowVectorXd (table (row, pivot.second) * table.row (pivot.first));
        pivots.push_back (pivot);
    }
    return pivots;
}

std::vector<int> range (int first, int count)
{
    std::vector<int> result (static_cast<std::size_t> (count));
    for (int k = 0; k < count; ++k)
        result[static_cast<std::size_t> (k)] = first + k;
    return result;
}

/// A combination of equations that holds no unknown and no state: the nodes or the op-amp it belongs to lack a path.
NetworkFault nameEmptyEquation (const NetworkEquations& equations, const Tables& tables)
{
    const int unknowns = equations.unknownCount();
    const Eigen::MatrixXd known = tables.fixed.topLeftCorner (unknowns, unknowns + equations.stateCount()).transpose();
    Eigen::FullPivLU<Eigen::MatrixXd> factors (known);
    factors.setThreshold (rankTolerance);
    if (factors.dimensionOfKernel() == 0)
        return { NetworkFault::Kind::unsolvable, equations.ownersOf (0).front(), {} };

    const Eigen::VectorXd weights = factors.kernel().col (0).cwiseAbs();
    NetworkFault fault { NetworkFault::Kind::floating, {}, {} };
    for (int index = 0; index < unknowns; ++index)
    {
        if (weights (index) < rankTolerance * weights.maxCoeff())
            continue;
        const auto& owners = equations.ownersOf (index);
        if (equations.isAmplifier (index))
            return { NetworkFault::Kind::opAmpWithoutFeedback, owners.front(), {} };
        fault.others.insert (fault.others.end(), owners.begin(), owners.end());
    }
    fault.subject = fault.others.empty() ? std::string() : fault.others.front();
    return fault;
}

/// E x_i' + E_d R x_i' - F_free w_free, the matrix that must give the rates of change and the free unknowns.
Eigen::MatrixXd rateMatrix (const NetworkEquations& equations,
                            const ReductionPlan& plan,
                            const Tables& tables,
                            const std::vector<std::pair<int, int>>& constraints)
{
    const int unknowns = equations.unknownCount();
    Eigen::MatrixXd matrix (equations.stateCount(), equations.stateCount());
    int column = 0;
    for (const int state : plan.independentStates)
    {
        matrix.col (column) = tables.rate.col (state);
        for (const auto& [row, dependent] : constraints)
            matrix.col (column) -= tables.rate.col (dependent - unknowns) * tables.fixed (row, unknowns + state);
        ++column;
    }
    for (const int free : plan.freeColumns)
        matrix.col (column++) = -tables.fixed.col (free).segment (unknowns, equations.stateCount());
    return matrix;
}

/// The undetermined combination of free unknowns, named.
NetworkFault nameUndetermined (const NetworkEquations& equations,
                               const ReductionPlan& plan,
                               const Eigen::FullPivLU<Eigen::MatrixXd>& factors)
{
    const Eigen::VectorXd weights = factors.kernel().col (0).cwiseAbs();
    int best = plan.freeColumns.front();
    double most = -1.0;
    for (std::size_t k = 0; k < plan.freeColumns.size(); ++k)
    {
        const int free = plan.freeColumns[k];
        const double weight = weights (static_cast<Eigen::Index> (plan.independentStates.size() + k))
                              * (equations.isAmplifier (free) ? 10.0 : 1.0);
        if (weight > most)
        {
            most = weight;
            best = free;
        }
    }
    return { NetworkFault::Kind::unsolvable, equations.ownersOf (best).front(), {} };
}

/// Columns of -(S + E_d R_u): how the states' rows depend on the sources' rates of change.
Eigen::MatrixXd sourceRates (const NetworkEquations& equations,
                             const Tables& tables,
                             const std::vector<std::pair<int, int>>& constraints)
{
    Eigen::MatrixXd result = -tables.rate.rightCols (equations.sourceCount());
    for (const auto& [row, dependent] : constraints)
        result += tables.rate.col (dependent - equations.unknownCount())
                  * tables.fixed.row (row).segment (equations.firstSourceColumn(), equations.sourceCount());
    return result;
}

int findRateOutput (const NetworkEquations& equations,
                    const ReductionPlan& plan,
                    const Tables& tables,
                    const Eigen::MatrixXd& solution)
{
    for (int output = 0; output < equations.outputCount(); ++output)
        for (int source = 0; source < equations.sourceCount(); ++source)
        {
            double sum = 0.0;
            for (std::size_t k = 0; k < plan.freeColumns.size(); ++k)
                sum += tables.fixed (equations.firstSourceColumn() + output, plan.freeColumns[k])
                       * solution (static_cast<Eigen::Index> (plan.independentStates.size() + k), source);
            if (std::abs (sum) > rankTolerance)
                return output;
        }
    return -1;
}

} // namespace

ReductionPlan::ReductionPlan (const NetworkEquations& equations)
{
    const int unknowns = equations.unknownCount();
    auto tables = genericTables (equations);
    const auto original = tables;

    constraintRows = range (0, unknowns);
    freeColumns = range (0, unknowns);
    for (const auto& [row, column] : eliminate (tables.fixed, constraintRows, freeColumns))
    {
        pivotRows.push_back (row);
        pivotColumns.push_back (column);
    }
    std::sort (pivotRows.begin(), pivotRows.end());
    std::sort (pivotColumns.begin(), pivotColumns.end());

    auto rows = constraintRows;
    auto columns = range (unknowns, equations.stateCount());
    const auto constraints = eliminate (tables.fixed, rows, columns);
    if (! rows.empty())
    {
        fault = nameEmptyEquation (equations, original);
        return;
    }
    for (const int column : columns)
        independentStates.push_back (column - unknowns);
    for (const auto& constraint : constraints)
        dependentStates.push_back (constraint.second - unknowns);
    std::sort (dependentStates.begin(), dependentStates.end());
    if (equations.stateCount() == 0)
        return;

    Eigen::FullPivLU<Eigen::MatrixXd> factors (rateMatrix (equations, *this, tables, constraints));
    factors.setThreshold (rankTolerance);
    if (! factors.isInvertible())
    {
        fault = nameUndetermined (equations, *this, factors);
        return;
    }
    if (freeColumns.empty() || equations.sourceCount() == 0)
        return;
    const Eigen::MatrixXd solution = factors.solve (sourceRates (equations, tables, constraints));
    faultyOutput = findRateOutput (equations, *this, tables, solution);
    if (faultyOutput >= 0)
        fault = { NetworkFault::Kind::outputFollowsRate, {}, {} };
}

} // namespace stopwright
