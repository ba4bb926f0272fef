// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/SmallSignal.h"

#include <complex>
#include <functional>
#include <string>
#include <vector>

namespace stopwright
{

/// A response, or an impedance, as a function of s = j 2 pi f.
using FunctionOfS = std::function<std::complex<double> (std::complex<double>)>;

/// |got - want| / |want|, or |got| where want is 0.
double relativeError (std::complex<double> got, std::complex<double> want);

/// Worst relative error of the response from tap "in" to the output over `points` frequencies, evenly spaced in log.
double worstResponseError (const Netlist& netlist,
                           const FunctionOfS& closedForm,
                           double lowHz,
                           double highHz,
                           int points = 97);

/// The same for the impedance seen at `node`.
double worstImpedanceError (const Netlist& netlist,
                            const std::string& node,
                            const FunctionOfS& closedForm,
                            double lowHz,
                            double highHz,
                            int points = 97);

/// Response from tap "in" to the output in dB.
double responseDb (const SmallSignal& analysis, const Netlist& netlist, double frequencyHz);

/// Where a function of frequency has its maximum between two frequencies (golden section).
double peakHz (const std::function<double (double)>& level, double lowHz, double highHz);

/// Where a function of frequency takes a value between two frequencies (bisection; it must cross once).
double crossingHz (const std::function<double (double)>& level, double value, double lowHz, double highHz);

} // namespace stopwright
