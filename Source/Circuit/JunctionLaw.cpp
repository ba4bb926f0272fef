// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/JunctionLaw.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

/// e^x with its slope; straight on beyond `largest`, so that nothing overflows.
struct Exponential
{
    Exponential (double x, double largest) noexcept
    {
        const double inside = x < largest ? x : largest;
        slope = std::exp (inside);
        value = slope * (1.0 + (x - inside));
    }

    double value;
    double slope;
};

} // namespace

JunctionLaw::JunctionLaw (const Diode& diode) noexcept
    : isTransistor_ (false),
      saturationAmps_ (diode.saturationAmps),
      exponentVolts_ (diode.emissionCoefficient * thermalVolts),
      largestExponent_ (std::log (largestAmps / saturationAmps_))
{}

JunctionLaw::JunctionLaw (const Transistor& transistor) noexcept
    : isTransistor_ (true),
      saturationAmps_ (transistor.saturationAmps),
      exponentVolts_ (thermalVolts),
      largestExponent_ (std::log (largestAmps / saturationAmps_)),
      inverseForward_ (1.0 / transistor.forwardBeta),
      inverseReverse_ (1.0 / transistor.reverseBeta),
      leakageAmps_ (transistor.leakageAmps),
      inverseEarly_ (transistor.earlyVolts ? 1.0 / *transistor.earlyVolts : 0.0)
{}

void JunctionLaw::evaluate (const double* volts, double* amps, double* slopes, double* cross) const noexcept
{
    const double perVolt = 1.0 / exponentVolts_;
    const Exponential first (volts[0] * perVolt, largestExponent_);
    const double firstSlope = saturationAmps_ * perVolt * first.slope;
    if (! isTransistor_)
    {
        amps[0] = saturationAmps_ * (first.value - 1.0) + leastSiemens * volts[0];
        slopes[0] = firstSlope + leastSiemens;
        cross[0] = 0.0;
        return;
    }

    const Exponential second (volts[1] * perVolt, largestExponent_);
    const double secondSlope = saturationAmps_ * perVolt * second.slope;
    const bool isBlocked = volts[1] < 0.0;

    // Early effect: the factor of the transport current and its slope along vbc.
    const double tilt = volts[1] * inverseEarly_;
    const double factor = isBlocked ? 1.0 - tilt : 1.0 / (1.0 + tilt);
    const double factorSlope = isBlocked ? -inverseEarly_ : -inverseEarly_ * factor * factor;
    const double flat = saturationAmps_ * (first.value - second.value);
    const double transport = factor * flat;
    const double forward = factor * firstSlope;
    const double reverse = factorSlope * flat - factor * secondSlope;

    const double leakPerVolt = leakageAmps_ * perVolt;
    const double leak = isBlocked ? leakageAmps_ * (second.value - 1.0) : leakPerVolt * volts[1];
    const double leakSlope = isBlocked ? leakPerVolt * second.slope : leakPerVolt;

    amps[0] = transport + saturationAmps_ * inverseForward_ * (first.value - 1.0) + leastSiemens * volts[0];
    amps[1] = -transport + saturationAmps_ * inverseReverse_ * (second.value - 1.0) + leak + leastSiemens * volts[1];
    slopes[0] = forward + inverseForward_ * firstSlope + leastSiemens;
    slopes[1] = -reverse + inverseReverse_ * secondSlope + leakSlope + leastSiemens;
    cross[0] = reverse;
    cross[1] = -forward;
}

double JunctionLaw::kneeVolts (double ohms) const noexcept
{
    return exponentVolts_ * std::log (exponentVolts_ / (saturationAmps_ * std::abs (ohms)));
}

double JunctionLaw::limited (double next, double last, double kneeVolts) const noexcept
{
    constexpr double shortStep = 0.1; // of n Vt: the two ways then lead to the same place
    if (next <= kneeVolts || std::abs (next - last) <= shortStep * exponentVolts_)
        return next;
    const double start = last > kneeVolts ? last : kneeVolts;
    const double argument = 1.0 + (next - start) / exponentVolts_;
    return argument > 0.0 ? std::max (kneeVolts, start + exponentVolts_ * std::log (argument)) : kneeVolts;
}

} // namespace stopwright
