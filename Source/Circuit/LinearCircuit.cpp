// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/LinearCircuit.h"

#include "Circuit/CheckedBuilder.h"
#include "Circuit/Junction.h"
#include "Circuit/KnobBank.h"
#include "Circuit/KnobHold.h"
#include "Circuit/StateAdoption.h"
#include "Circuit/SteppedNetwork.h"
#include "Units/Error.h"

#include <algorithm>

namespace stopwright
{

namespace
{

std::size_t at (int index) noexcept
{
    return static_cast<std::size_t> (index);
}

StateSpaceBuilder
    linearBuilder (const Netlist& netlist, const std::vector<std::string>& outputNodes, double sampleRateHz)
{
    if (hasDevices (netlist))
        throw Error ("The network has diodes, transistors or supplies, which a linear circuit cannot run; run it as a "
                     "nonlinear one.");
    return checkedBuilder (netlist, outputNodes, sampleRateHz);
}

} // namespace

struct LinearCircuit::Implementation
{
    Implementation (const Netlist& netlist, const std::vector<std::string>& outputNodes, double sampleRateHz)
        : network (linearBuilder (netlist, outputNodes, sampleRateHz), sampleRateHz),
          knobs (network.builder().knobs(), rampStepsWithin (rampSeconds, sampleRateHz)),
          hold (holdSamples (sampleRateHz)),
          sources (netlist.sources)
    {
        if (! network.build (knobs.values()))
            throw Error (sentenceFor ({ NetworkFault::Kind::valuesTooFarApart, {}, {} }));
    }

    SteppedNetwork network;
    KnobBank knobs;
    int hold = 1;              ///< samples from one step of the ramps to the next
    int heldSamples = 0;       ///< of them still to go
    bool needsRebuild = false; ///< a knob has jumped
    std::vector<SourcePort> sources;
};

LinearCircuit::LinearCircuit (const Netlist& netlist, const std::vector<std::string>& outputNodes, double sampleRateHz)
    : implementation_ (std::make_unique<Implementation> (netlist, outputNodes, sampleRateHz))
{}

LinearCircuit::~LinearCircuit() = default;

int LinearCircuit::sourceCount() const noexcept
{
    return implementation_->network.builder().sourceCount();
}

int LinearCircuit::outputCount() const noexcept
{
    return implementation_->network.builder().outputCount();
}

int LinearCircuit::stateCount() const noexcept
{
    return implementation_->network.builder().stateCount();
}

int LinearCircuit::knobCount() const noexcept
{
    return implementation_->network.builder().knobs().size();
}

std::optional<int> LinearCircuit::findKnob (const PartKnob& knob) const
{
    return implementation_->network.builder().knobs().find (knob.part, knob.kind);
}

void LinearCircuit::setKnobTarget (int knobIndex, double value) noexcept
{
    implementation_->knobs.setTarget (knobIndex, value);
}

void LinearCircuit::setKnobNow (int knobIndex, double value) noexcept
{
    if (! implementation_->knobs.setNow (knobIndex, value))
        return;
    implementation_->needsRebuild = true;
    implementation_->network.dampNextSample();
}

double LinearCircuit::knobValue (int knobIndex) const noexcept
{
    return implementation_->knobs.values()[at (knobIndex)];
}

bool LinearCircuit::isMoving() const noexcept
{
    return implementation_->knobs.isMoving();
}

void LinearCircuit::process (std::span<const double* const> sources,
                             std::span<double* const> outputs,
                             int frameCount) noexcept
{
    auto& self = *implementation_;
    int done = 0;
    while (done < frameCount)
    {
        if (self.knobs.isMoving() && self.heldSamples == 0)
        {
            self.knobs.advance();
            self.heldSamples = self.hold;
            self.needsRebuild = true;
        }
        if (self.needsRebuild)
            self.network.build (self.knobs.values());
        self.needsRebuild = false;

        const bool isStill = self.heldSamples == 0;
        const int count = isStill ? frameCount - done : std::min (frameCount - done, self.heldSamples);
        self.network.run (sources.data(), outputs.data(), done, count, isStill);
        self.heldSamples -= isStill ? 0 : count;
        done += count;
    }
}

void LinearCircuit::reset() noexcept
{
    auto& self = *implementation_;
    self.knobs.finish();
    self.network.build (self.knobs.values());
    self.network.reset();
    self.needsRebuild = false;
    self.heldSamples = 0;
}

std::vector<std::string> LinearCircuit::stateNames() const
{
    return stateNamesOf (implementation_->network.builder());
}

std::vector<int> LinearCircuit::adoptionMap (const LinearCircuit& other) const
{
    return adoptionMapOf (implementation_->network.builder(), implementation_->sources,
                          other.implementation_->network.builder(), other.implementation_->sources);
}

void LinearCircuit::adoptStates (const LinearCircuit& other, std::span<const int> adoptionMap) noexcept
{
    adoptStatesOf (other.implementation_->network, adoptionMap, implementation_->network);
    implementation_->network.dampNextSample();
}

double LinearCircuit::storedEnergy() const noexcept
{
    return implementation_->network.storedEnergy (implementation_->knobs.values());
}

} // namespace stopwright
