// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/LinearCircuit.h"

#include <functional>
#include <vector>

namespace stopwright
{

/// A circuit with one source and one output, fed sample by sample or in pieces, for tests.
class CircuitRun
{
public:
    CircuitRun (const Netlist& netlist, double sampleRateHz);

    LinearCircuit circuit;

    int knob (const std::string& part, KnobKind kind = KnobKind::value) const;

    /// Runs `input` in pieces of at most pieceLength (0: all at once) and returns the output.
    std::vector<double> run (const std::vector<double>& input, int pieceLength = 0);

    /// One sample.
    double step (double input);
};

/// `count` values of a function of the sample's number.
std::vector<double> samplesOf (int count, const std::function<double (int)>& function);

} // namespace stopwright
