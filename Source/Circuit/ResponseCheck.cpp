// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ResponseCheck.h"

#include "Circuit/FindingWords.h"
#include "Circuit/NaturalModes.h"
#include "Circuit/NodalSolver.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace stopwright
{

namespace
{

/// |voltage of every node from every source|, one column per source.
using Magnitudes = ExtendedMatrix;

Magnitudes magnitudesAt (const NodalEquations& equations, Extended s)
{
    return NodalSolver (equations, s).solve (equations.excitation().cast<ExtendedComplex>()).cwiseAbs();
}

/// Below this a response is rounding.
constexpr Extended silence = 1e-18L;

void checkSilence (const Netlist& netlist, const NodalEquations& equations, int output, FindingList& findings)
{
    constexpr std::array<Extended, 3> probes { 311.7L, 7717.1L, 93011.3L };
    Magnitudes largest = Magnitudes::Zero (equations.size(), equations.excitation().cols());
    for (const Extended s : probes)
        largest = largest.cwiseMax (magnitudesAt (equations, s));

    for (std::size_t index = 0; index < netlist.sources.size(); ++index)
        if (largest (output, static_cast<Eigen::Index> (index)) < silence)
            findings.addWarning (netlist.sources[index].name,
                                 "Nothing from tap " + partWords (netlist.sources[index].name) + " reaches the output "
                                     + nodeWords (netlist.output) + "; connect them, or name another output.");
}

Extended fastestRate (const NodalEquations& equations)
{
    double fastest = 1e4;
    for (const auto& mode : naturalModes (equations))
        fastest = std::max (fastest, std::abs (mode.frequency));
    return static_cast<Extended> (fastest);
}

/// Op-amps whose output follows the rate of change of this source too.
std::vector<std::string>
    followingOpAmps (const Netlist& netlist, const NodalEquations& equations, const std::vector<bool>& follows)
{
    std::vector<std::string> names;
    for (const auto& part : netlist.parts)
        if (std::holds_alternative<OpAmp> (part.value))
            if (const int node = equations.nodes().find (part.nodes[2]);
                node >= 0 && follows[static_cast<std::size_t> (node)])
                names.push_back (part.name);
    return names;
}

void reportRate (const Netlist& netlist,
                 const SourcePort& source,
                 const std::vector<std::string>& opAmps,
                 FindingList& findings)
{
    const auto who = opAmps.empty()
                         ? std::string()
                         : " (" + partsWords (opAmps)
                               + (opAmps.size() == 1 ? " is an ideal differentiator)" : " are ideal differentiators)");
    findings.addError (
        opAmps.empty() ? netlist.output : opAmps.front(),
        "The output " + nodeWords (netlist.output) + " follows the rate of change of tap " + partWords (source.name)
            + " without limit" + who
            + "; put a resistor in series with the capacitor in its input or across the coil in its feedback,"
              " or give the op-amp a gain-bandwidth product.");
}

/// Far above all that the network does, a response that still rises with frequency follows a rate of change.
void checkRates (const Netlist& netlist, const NodalEquations& equations, int output, FindingList& findings)
{
    constexpr Extended far = 1e3L;
    constexpr Extended step = 1e3L;
    constexpr Extended leastRise = 30.0L;
    const Extended s = far * fastestRate (equations);
    const auto near = magnitudesAt (equations, s);
    const auto beyond = magnitudesAt (equations, s * step);

    for (std::size_t index = 0; index < netlist.sources.size(); ++index)
    {
        std::vector<bool> follows;
        for (int node = 0; node < equations.nodeCount(); ++node)
        {
            const auto column = static_cast<Eigen::Index> (index);
            follows.push_back (beyond (node, column) > silence
                               && beyond (node, column) > leastRise * near (node, column));
        }
        if (follows[static_cast<std::size_t> (output)])
            reportRate (netlist, netlist.sources[index], followingOpAmps (netlist, equations, follows), findings);
    }
}

} // namespace

void checkResponses (const Netlist& netlist, const NodalEquations& equations, FindingList& findings)
{
    const int output = equations.nodes().find (netlist.output);
    if (netlist.sources.empty())
        findings.addWarning (netlist.output, "The network has no tap, so it stays silent; add a tap that feeds it.");
    if (output == NodeMap::common)
    {
        if (netlist.output != commonNode)
            findings.addWarning (netlist.output, "The output " + nodeWords (netlist.output)
                                                     + " is shorted to common by a closed switch, so it is silent.");
        return;
    }
    checkSilence (netlist, equations, output, findings);
    checkRates (netlist, equations, output, findings);
}

} // namespace stopwright
