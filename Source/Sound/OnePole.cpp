// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/OnePole.h"

#include <numbers>

namespace stopwright
{

OnePole::OnePole (double cornerHz, double rateHz)
{
    const double a = std::numbers::pi * cornerHz / rateHz;
    keep_ = (1.0 - a) / (1.0 + a);
    feed_ = a / (1.0 + a);
}

/// In copies: the samples might lie over the members for all that the compiler knows, and it would store at each step.
template <typename Take>
void OnePole::run (std::span<double> volts, Take take) noexcept
{
    double charge = charge_;
    double last = lastInput_;
    for (double& sample : volts)
    {
        const double in = sample;
        charge = keep_ * charge + feed_ * (last + in);
        last = in;
        sample = take (in, charge);
    }
    charge_ = charge;
    lastInput_ = last;
}

void OnePole::lowpass (std::span<double> volts) noexcept
{
    run (volts, [] (double, double charge) { return charge; });
}

void OnePole::highpass (std::span<double> volts) noexcept
{
    run (volts, [] (double in, double charge) { return in - charge; });
}

void OnePole::reset() noexcept
{
    charge_ = 0.0;
    lastInput_ = 0.0;
}

void OnePole::copyStateFrom (const OnePole& other) noexcept
{
    charge_ = other.charge_;
    lastInput_ = other.lastInput_;
}

} // namespace stopwright
