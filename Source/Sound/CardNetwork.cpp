// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/CardNetwork.h"

namespace stopwright
{

CardNetwork::CardNetwork (const Netlist& netlist, const std::string& outputNode, double sampleRateHz)
{
    const std::vector<std::string> outputs { outputNode };
    if (stopwright::hasDevices (netlist))
        nonlinear_ = std::make_unique<NonlinearCircuit> (netlist, outputs, sampleRateHz);
    else
        linear_ = std::make_unique<LinearCircuit> (netlist, outputs, sampleRateHz);
}

int CardNetwork::knobCount() const noexcept
{
    return linear_ ? linear_->knobCount() : nonlinear_->knobCount();
}

std::optional<int> CardNetwork::findKnob (const PartKnob& knob) const
{
    return nonlinear_ ? nonlinear_->findKnob (knob) : linear_->findKnob (knob);
}

void CardNetwork::setKnobTarget (int knobIndex, double value) noexcept
{
    if (nonlinear_)
        nonlinear_->setKnobTarget (knobIndex, value);
    else
        linear_->setKnobTarget (knobIndex, value);
}

bool CardNetwork::isMoving() const noexcept
{
    return nonlinear_ ? nonlinear_->isMoving() : linear_->isMoving();
}

void CardNetwork::process (std::span<const double* const> sources, std::span<double> output) noexcept
{
    double* const outputs[] = { output.data() };
    if (! nonlinear_)
    {
        linear_->process (sources, outputs, static_cast<int> (output.size()));
        return;
    }
    nonlinear_->process (sources, outputs, static_cast<int> (output.size()));
    const double resting = nonlinear_->restingVolts (0);
    for (double& volts : output)
        volts -= resting;
}

void CardNetwork::reset() noexcept
{
    if (nonlinear_)
        nonlinear_->reset();
    else
        linear_->reset();
}

std::vector<std::string> CardNetwork::stateNames() const
{
    return linear_ ? linear_->stateNames() : nonlinear_->stateNames();
}

std::vector<int> CardNetwork::adoptionMap (const CardNetwork& other) const
{
    if (nonlinear_ && other.nonlinear_)
        return nonlinear_->adoptionMap (*other.nonlinear_);
    if (linear_ && other.linear_)
        return linear_->adoptionMap (*other.linear_);
    return {};
}

void CardNetwork::adoptStates (const CardNetwork& other, std::span<const int> adoptionMap) noexcept
{
    if (nonlinear_ && other.nonlinear_)
        nonlinear_->adoptStates (*other.nonlinear_, adoptionMap);
    else if (linear_ && other.linear_)
        linear_->adoptStates (*other.linear_, adoptionMap);
}

} // namespace stopwright
