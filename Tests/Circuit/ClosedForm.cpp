// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ClosedForm.h"

#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

std::vector<double> logSpaced (double low, double high, int points)
{
    std::vector<double> values;
    values.reserve (static_cast<std::size_t> (points));
    for (int index = 0; index < points; ++index)
        values.push_back (low * std::pow (high / low, index / static_cast<double> (points - 1)));
    return values;
}

std::complex<double> onAxis (double frequencyHz)
{
    return { 0.0, 2.0 * std::numbers::pi * frequencyHz };
}

} // namespace

double relativeError (std::complex<double> got, std::complex<double> want)
{
    const double size = std::abs (want);
    return size > 0.0 ? std::abs (got - want) / size : std::abs (got);
}

double
    worstResponseError (const Netlist& netlist, const FunctionOfS& closedForm, double lowHz, double highHz, int points)
{
    const SmallSignal analysis (netlist);
    double worst = 0.0;
    for (const double frequencyHz : logSpaced (lowHz, highHz, points))
        worst = std::max (worst, relativeError (analysis.response ("in", netlist.output, frequencyHz),
                                                closedForm (onAxis (frequencyHz))));
    return worst;
}

double worstImpedanceError (const Netlist& netlist,
                            const std::string& node,
                            const FunctionOfS& closedForm,
                            double lowHz,
                            double highHz,
                            int points)
{
    const SmallSignal analysis (netlist);
    double worst = 0.0;
    for (const double frequencyHz : logSpaced (lowHz, highHz, points))
        worst =
            std::max (worst, relativeError (analysis.impedance (node, frequencyHz), closedForm (onAxis (frequencyHz))));
    return worst;
}

double responseDb (const SmallSignal& analysis, const Netlist& netlist, double frequencyHz)
{
    return 20.0 * std::log10 (std::abs (analysis.response ("in", netlist.output, frequencyHz)));
}

double peakHz (const std::function<double (double)>& level, double lowHz, double highHz)
{
    const double golden = (std::sqrt (5.0) - 1.0) / 2.0;
    while (highHz - lowHz > 1e-7 * highHz)
    {
        const double left = highHz - golden * (highHz - lowHz);
        const double right = lowHz + golden * (highHz - lowHz);
        if (level (left) > level (right))
            highHz = right;
        else
            lowHz = left;
    }
    return 0.5 * (lowHz + highHz);
}

double crossingHz (const std::function<double (double)>& level, double value, double lowHz, double highHz)
{
    const bool risesThere = level (highHz) > level (lowHz);
    while (highHz - lowHz > 1e-12 * highHz)
    {
        const double middle = 0.5 * (lowHz + highHz);
        const bool isAbove = level (middle) > value;
        (isAbove == risesThere ? highHz : lowHz) = middle;
    }
    return 0.5 * (lowHz + highHz);
}

} // namespace stopwright
