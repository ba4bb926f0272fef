// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/CircuitRun.h"

#include <algorithm>

namespace stopwright
{

CircuitRun::CircuitRun (const Netlist& netlist, double sampleRateHz)
    : circuit (netlist, { netlist.output }, sampleRateHz)
{}

int CircuitRun::knob (const std::string& part, KnobKind kind) const
{
    return circuit.findKnob ({ part, kind }).value();
}

std::vector<double> CircuitRun::run (const std::vector<double>& input, int pieceLength)
{
    std::vector<double> output (input.size());
    const int count = static_cast<int> (input.size());
    const int piece = pieceLength > 0 ? pieceLength : std::max (count, 1);
    for (int done = 0; done < count; done += piece)
    {
        const double* from[] = { input.data() + done };
        double* to[] = { output.data() + done };
        circuit.process (from, to, std::min (piece, count - done));
    }
    return output;
}

double CircuitRun::step (double input)
{
    double output = 0.0;
    const double* from[] = { &input };
    double* to[] = { &output };
    circuit.process (from, to, 1);
    return output;
}

std::vector<double> samplesOf (int count, const std::function<double (int)>& function)
{
    std::vector<double> samples;
    samples.reserve (static_cast<std::size_t> (count));
    for (int index = 0; index < count; ++index)
        samples.push_back (function (index));
    return samples;
}

} // namespace stopwright
