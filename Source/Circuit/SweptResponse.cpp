// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/SweptResponse.h"

#include "Circuit/CheckedBuilder.h"
#include "Circuit/Junction.h"
#include "Circuit/NetlistCheck.h"
#include "Circuit/NetworkFault.h"
#include "Units/Error.h"

#include <Eigen/Eigenvalues>

#include <cmath>
#include <numbers>
#include <utility>

namespace stopwright
{

namespace
{

/// CheckedBuilder asks for a rate only because what it makes usually runs in time.
constexpr double anyRateHz = 192000.0;

/// Powers of two that make rows and columns of `a` about equally large: x = scales * x', and rounding in the Schur form
/// then is small against every state, volts and microamps alike.
/// Source: Osborne, "On pre-conditioning of matrices", 1960; from memory.
Eigen::VectorXd balancingScales (Eigen::MatrixXd a)
{
    constexpr int sweeps = 8;
    Eigen::VectorXd scales = Eigen::VectorXd::Ones (a.rows());
    for (int sweep = 0; sweep < sweeps; ++sweep)
        for (Eigen::Index state = 0; state < a.rows(); ++state)
        {
            const double own = std::abs (a (state, state));
            const double row = a.row (state).lpNorm<1>() - own;
            const double column = a.col (state).lpNorm<1>() - own;
            if (! (row > 0.0 && column > 0.0))
                continue;
            const double scale = std::exp2 (std::round (0.5 * std::log2 (row / column)));
            a.row (state) /= scale;
            a.col (state) *= scale;
            scales (state) *= scale;
        }
    return scales;
}

} // namespace

SweptResponse::SweptResponse (const Netlist& netlist, std::string node)
    : sourceCount_ (static_cast<int> (netlist.sources.size())),
      node_ (std::move (node))
{
    if (hasDevices (netlist))
    {
        requireRunnable (netlist, { node_ }, anyRateHz);
        smallSignal_.emplace (netlist);
        return;
    }
    auto builder = checkedBuilder (netlist, { node_ }, anyRateHz);
    auto network = builder.makeStateSpace();
    if (! builder.build (builder.knobs().values(), network))
        throw Error (sentenceFor ({ NetworkFault::Kind::valuesTooFarApart, {}, {} }));
    bringToSchurForm (network);
}

void SweptResponse::bringToSchurForm (const StateSpace& network)
{
    direct_ = network.d.row (0).leftCols (sourceCount_);
    if (network.stateCount() == 0)
        return; // resistors only; there is no Schur form of nothing
    const Eigen::VectorXd scales = balancingScales (network.a);
    const Eigen::VectorXd inverses = scales.cwiseInverse();
    const Eigen::MatrixXd balanced = inverses.asDiagonal() * network.a * scales.asDiagonal();
    const Eigen::ComplexSchur<Eigen::MatrixXcd> schur (balanced.cast<Complex>());
    const Eigen::MatrixXcd intoBasis = schur.matrixU().adjoint() * inverses.cast<Complex>().asDiagonal();
    triangle_ = schur.matrixT();
    fromSources_ = intoBasis * network.b.leftCols (sourceCount_).cast<Complex>();
    fromSourceRates_ = intoBasis * network.bDot.leftCols (sourceCount_).cast<Complex>();
    toNode_ = network.c.row (0).cast<Complex>() * scales.cast<Complex>().asDiagonal() * schur.matrixU();
}

// x (s - T) = c, from the first column on: what the node hears of each state's drive, whichever source it comes from.
std::vector<std::complex<double>> SweptResponse::nodeOfDrives (Complex s) const
{
    const auto count = triangle_.rows();
    std::vector<Complex> node (static_cast<std::size_t> (count));
    for (Eigen::Index column = 0; column < count; ++column)
    {
        Complex sum = toNode_ (column);
        for (Eigen::Index row = 0; row < column; ++row)
            sum += node[static_cast<std::size_t> (row)] * triangle_ (row, column);
        node[static_cast<std::size_t> (column)] = sum / (s - triangle_ (column, column));
    }
    return node;
}

std::vector<std::complex<double>> SweptResponse::at (double frequencyHz) const
{
    if (smallSignal_)
        return smallSignal_->responses (node_, frequencyHz);
    const Complex s { 0.0, 2.0 * std::numbers::pi * frequencyHz };
    std::vector<Complex> responses;
    responses.reserve (static_cast<std::size_t> (sourceCount_));
    const auto node = nodeOfDrives (s);
    for (int source = 0; source < sourceCount_; ++source)
    {
        Complex volts = direct_ (source);
        for (std::size_t state = 0; state < node.size(); ++state)
        {
            const auto row = static_cast<Eigen::Index> (state);
            volts += node[state] * (fromSources_ (row, source) + s * fromSourceRates_ (row, source));
        }
        responses.push_back (volts);
    }
    return responses;
}

} // namespace stopwright
