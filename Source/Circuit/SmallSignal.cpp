// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/SmallSignal.h"

#include "Circuit/FindingWords.h"
#include "Circuit/NaturalModes.h"
#include "Circuit/NetlistCheck.h"
#include "Circuit/NodalSolver.h"
#include "Circuit/OperatingPoint.h"
#include "Units/Error.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;
using Responses = std::vector<Complex>;

Complex toDouble (ExtendedComplex value)
{
    return { static_cast<double> (value.real()), static_cast<double> (value.imag()) };
}

ExtendedComplex onImaginaryAxis (Extended frequencyHz)
{
    return { 0.0L, 2.0L * std::numbers::pi_v<Extended> * frequencyHz };
}

/// A pivot this far below the largest of the equilibrated matrix is rounding.
constexpr Extended singularPivot = 1e-16L;

bool isSingularAtRest (const NodalEquations& equations)
{
    auto matrix = equations.at (0.0L);
    const Equilibration scales (matrix);
    Eigen::FullPivLU<ExtendedMatrix> factors (matrix.real());
    factors.setThreshold (singularPivot);
    return ! factors.isInvertible();
}

} // namespace

struct SmallSignal::Implementation
{
    explicit Implementation (const Netlist& netlist) : equations (netlist, findOperatingPoint (netlist).slopes)
    {
        for (const auto& source : netlist.sources)
            sourceNames.push_back (source.name);
    }

    int requireNode (std::string_view name) const
    {
        const int node = equations.nodes().find (name);
        if (node == NodeMap::unknown)
            throw Error ("There is no " + nodeWords (name) + " in this network; name one that a part touches.");
        return node;
    }

    std::size_t requireSource (std::string_view name) const
    {
        const auto place = std::find (sourceNames.begin(), sourceNames.end(), name);
        if (place == sourceNames.end())
            throw Error ("There is no tap " + partWords (name) + " in this network; name one of its taps.");
        return static_cast<std::size_t> (place - sourceNames.begin());
    }

    /// Row `node` of (G + s E)^-1 rightSides.
    Responses rowAt (int node, const ExtendedMatrix& rightSides, ExtendedComplex s) const
    {
        const auto solution = NodalSolver (equations, s).solve (rightSides.cast<ExtendedComplex>());
        Responses row;
        for (const auto& entry : solution.row (node))
            row.push_back (toDouble (entry));
        return row;
    }

    /// A frequency far below all that the network does.
    Extended nearRestHz() const
    {
        constexpr double belowSlowest = 1e-6;
        for (const auto& mode : naturalModes (equations))
            if (std::abs (mode.frequency) > 0.0)
                return static_cast<Extended> (belowSlowest * std::abs (mode.frequency) / (2.0 * std::numbers::pi));
        return 1.0L;
    }

    /// The limit towards 0 Hz where the equations have no solution at 0 Hz itself (nodes held by capacitors only,
    /// integrators): the real part near rest, which is off by the square of the ratio of frequencies, or infinity.
    Responses rowAtRest (int node, const ExtendedMatrix& rightSides) const
    {
        const Extended nearHz = nearRestHz();
        const auto near = rowAt (node, rightSides, onImaginaryAxis (nearHz));
        const auto nearer = rowAt (node, rightSides, onImaginaryAxis (nearHz / 2.0L));
        Responses limits;
        for (std::size_t index = 0; index < near.size(); ++index)
        {
            const bool grows = std::abs (nearer[index]) > 1.5 * std::abs (near[index]);
            limits.emplace_back (grows ? std::numeric_limits<double>::infinity() : nearer[index].real());
        }
        return limits;
    }

    Responses row (int node, const ExtendedMatrix& rightSides, double frequencyHz) const
    {
        if (! (frequencyHz >= 0.0) || ! std::isfinite (frequencyHz))
            throw Error (
                "A response was asked for at a frequency that is negative or not finite; give one from 0 Hz up.");
        if (node == NodeMap::common)
            return Responses (static_cast<std::size_t> (rightSides.cols()));
        if (frequencyHz == 0.0 && isSingularAtRest (equations))
            return rowAtRest (node, rightSides);
        return rowAt (node, rightSides, onImaginaryAxis (frequencyHz));
    }

    NodalEquations equations;
    std::vector<std::string> sourceNames;
};

SmallSignal::SmallSignal (const Netlist& netlist)
{
    requireSound (netlist);
    implementation_ = std::make_unique<Implementation> (netlist);
}

SmallSignal::~SmallSignal() = default;
SmallSignal::SmallSignal (SmallSignal&&) noexcept = default;
SmallSignal& SmallSignal::operator= (SmallSignal&&) noexcept = default;

std::complex<double> SmallSignal::response (std::string_view source, std::string_view node, double frequencyHz) const
{
    return responses (node, frequencyHz)[implementation_->requireSource (source)];
}

std::vector<std::complex<double>> SmallSignal::responses (std::string_view node, double frequencyHz) const
{
    const int index = implementation_->requireNode (node);
    return implementation_->row (index, implementation_->equations.excitation(), frequencyHz);
}

std::complex<double> SmallSignal::impedance (std::string_view node, double frequencyHz) const
{
    const int index = implementation_->requireNode (node);
    ExtendedMatrix oneAmp = ExtendedMatrix::Zero (implementation_->equations.size(), 1);
    if (index != NodeMap::common)
        oneAmp (index, 0) = 1.0L;
    return implementation_->row (index, oneAmp, frequencyHz).front();
}

std::vector<std::complex<double>> SmallSignal::poles() const
{
    std::vector<std::complex<double>> poles;
    for (const auto& mode : naturalModes (implementation_->equations))
        poles.push_back (mode.frequency);
    return poles;
}

} // namespace stopwright
