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

void OnePole::lowpass (std::span<double> volts) noexcept
{
    OnePole here = *this; // in registers
    for (double& sample : volts)
        sample = here.step (sample);
    *this = here;
}

void OnePole::highpass (std::span<double> volts) noexcept
{
    OnePole here = *this; // in registers
    for (double& sample : volts)
        sample -= here.step (sample);
    *this = here;
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
