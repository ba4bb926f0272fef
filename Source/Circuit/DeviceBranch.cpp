// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/DeviceBranch.h"

#include "Circuit/LinearCircuit.h"
#include "Circuit/ValueLimits.h"
#include "Units/Error.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

/// Far below anything heard: a nanovolt over the least resistor.
constexpr double closeEnoughVolts = 1e-9;

} // namespace

DeviceBranch::DeviceBranch (const Netlist& netlist, double mixingOhms, double sampleRateHz)
    : circuit_ (netlist, { netlist.output }, sampleRateHz),
      mixing_ (mixingOhms),
      rampSamples_ (std::max (1, static_cast<int> (LinearCircuit::rampSeconds * sampleRateHz))),
      output_ (1)
{
    if (! (mixingOhms > 0.0))
        throw Error ("A mixing resistor of " + std::to_string (mixingOhms) + " ohm cannot be; give it more than zero.");
    if (! circuit_.takesCurrent())
        throw Error ("Only coils reach the output node '" + netlist.output
                     + "', so no mixing resistor can be put there; put a large resistor from it to common.");
}

void DeviceBranch::setKnobTarget (int knobIndex, double value) noexcept
{
    if (knobIndex != mixingKnob())
        circuit_.setKnobTarget (knobIndex, value);
    else if (std::isfinite (value))
        mixing_.moveTo (ValueLimits::resistance.clamp (value), rampSamples_, false);
}

void DeviceBranch::openFrame (std::span<const double> sources) noexcept
{
    if (mixing_.isMoving())
        mixing_.advance();
    circuit_.openFrame (sources);
}

// f (i) = G (p - y (i)) - i, which falls all the way: y rises with i.
double DeviceBranch::currentInto (double busVolts) noexcept
{
    const double siemens = conductance();
    for (int step = 0; step < mostSteps; ++step)
    {
        const auto answer = circuit_.tryFrame (amps_);
        const double error = siemens * (busVolts - answer.volts) - amps_;
        ohms_ = std::max (0.0, answer.ohms);
        if (std::abs (error) <= closeEnoughVolts * siemens)
            break;
        amps_ += error / (1.0 + siemens * ohms_);
    }
    return amps_;
}

DeviceBranch::Reading DeviceBranch::reading (double busVolts) noexcept
{
    const double amps = currentInto (busVolts);
    return { -amps, -conductance() / (1.0 + conductance() * ohms_) };
}

void DeviceBranch::closeFrame (double busVolts) noexcept
{
    circuit_.closeFrame (currentInto (busVolts), output_);
}

void DeviceBranch::reset() noexcept
{
    circuit_.reset();
    mixing_.jumpTo (mixing_.target());
    amps_ = 0.0;
}

void DeviceBranch::adoptStates (const DeviceBranch& other, std::span<const int> map) noexcept
{
    circuit_.adoptStates (other.circuit_, map);
    amps_ = other.amps_;
}

} // namespace stopwright
