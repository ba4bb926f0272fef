// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Netlist.h"
#include "Circuit/SmallSignal.h"
#include "Circuit/StateSpace.h"

#include <Eigen/Core>

#include <complex>
#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// The response of one node to every source at very many frequencies: the state space in Schur form, so that a frequency
/// costs one triangular solution, whatever the sources. SmallSignal gives the same from the nodal equations, slower, and is
/// asked for networks with diodes or transistors.
/// Threading: [control]; `at` may be called by several threads.
/// Source: Golub and Van Loan, "Matrix Computations", the complex Schur form; from memory.
class SweptResponse
{
public:
    /// Fails: Error with a sentence when the netlist is not sound, has no such node or no operating point.
    SweptResponse (const Netlist& netlist, std::string node);

    int sourceCount() const noexcept { return sourceCount_; }

    /// Complex ratio of the node's voltage to each source's open-circuit voltage, in the netlist's order of sources.
    /// Range: frequencyHz >= 0, finite.
    std::vector<std::complex<double>> at (double frequencyHz) const;

private:
    using Complex = std::complex<double>;

    void bringToSchurForm (const StateSpace& network);
    std::vector<Complex> nodeOfDrives (Complex s) const;

    int sourceCount_;
    std::string node_;
    std::optional<SmallSignal> smallSignal_; ///< with devices; all below is empty then
    Eigen::MatrixXcd triangle_;
    Eigen::MatrixXcd fromSources_, fromSourceRates_; ///< in the basis of triangle_
    Eigen::RowVectorXcd toNode_;
    Eigen::RowVectorXd direct_;
};

} // namespace stopwright
