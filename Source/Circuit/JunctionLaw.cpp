// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/JunctionLaw.h"

#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

/// e^x with its slope; straight on beyond the largest exponent, so that nothing overflows.
struct Exponential
{
    explicit Exponential (double x) noexcept
    {
        const double inside = x < JunctionLaw::largestExponent ? x : JunctionLaw::largestExponent;
        slope = std::exp (inside);
        value = slope * (1.0 + (x - inside));
    }

    double value;
    double slope;
};

double criticalVolts (double saturationAmps, double exponentVolts) noexcept
{
    return exponentVolts * std::log (exponentVolts / (std::numbers::sqrt2 * saturationAmps));
}

} // namespace

JunctionLaw::JunctionLaw (const Diode& diode) noexcept
    : isTransistor_ (false),
      saturationAmps_ (diode.saturationAmps),
      exponentVolts_ (diode.emissionCoefficient * thermalVolts),
      criticalVolts_ (criticalVolts (saturationAmps_, exponentVolts_))
{}

JunctionLaw::JunctionLaw (const Transistor& transistor) noexcept
    : isTransistor_ (true),
      saturationAmps_ (transistor.saturationAmps),
      exponentVolts_ (thermalVolts),
      criticalVolts_ (criticalVolts (saturationAmps_, exponentVolts_)),
      inverseForward_ (1.0 / transistor.forwardBeta),
      inverseReverse_ (1.0 / transistor.reverseBeta),
      leakageAmps_ (transistor.leakageAmps),
      inverseEarly_ (transistor.earlyVolts ? 1.0 / *transistor.earlyVolts : 0.0)
{}

void JunctionLaw::evaluate (const double* volts, double* amps, double* slopes, double* cross) const noexcept
{
    const double perVolt = 1.0 / exponentVolts_;
    const Exponential first (volts[0] * perVolt);
    const double firstSlope = saturationAmps_ * perVolt * first.slope;
    if (! isTransistor_)
    {
        amps[0] = saturationAmps_ * (first.value - 1.0) + leastSiemens * volts[0];
        slopes[0] = firstSlope + leastSiemens;
        cross[0] = 0.0;
        return;
    }

    const Exponential second (volts[1] * perVolt);
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

double JunctionLaw::limited (double next, double last) const noexcept
{
    if (next <= criticalVolts_ || std::abs (next - last) <= 2.0 * exponentVolts_)
        return next;
    if (last <= 0.0)
        return exponentVolts_ * std::log (next / exponentVolts_);
    const double argument = 1.0 + (next - last) / exponentVolts_;
    return argument > 0.0 ? last + exponentVolts_ * std::log (argument) : criticalVolts_;
}

} // namespace stopwright
