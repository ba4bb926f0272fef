// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NonlinearCircuit.h"

#include "Circuit/CheckedBuilder.h"
#include "Circuit/KnobBank.h"
#include "Circuit/KnobHold.h"
#include "Circuit/LinearCircuit.h"
#include "Circuit/NetworkFault.h"
#include "Circuit/StateAdoption.h"
#include "Units/Error.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

std::size_t at (int index) noexcept
{
    return static_cast<std::size_t> (index);
}

/// With a port into the first output if there can be one.
struct Built
{
    StateSpaceBuilder builder;
    bool isInjected = false;
};

Built makeBuilder (const Netlist& netlist, const std::vector<std::string>& outputNodes, double sampleRateHz)
{
    if (outputNodes.empty())
        throw Error ("No node was named to listen to; name at least one.");
    requireRunnable (netlist, outputNodes, sampleRateHz);
    StateSpaceBuilder injected (netlist, outputNodes, { outputNodes.front() });
    if (! injected.fault())
        return { std::move (injected), true };
    StateSpaceBuilder plain (netlist, outputNodes);
    if (plain.fault())
        throw Error (sentenceFor (plain.fault()));
    return { std::move (plain), false };
}

} // namespace

struct NonlinearCircuit::Implementation
{
    Implementation (const Netlist& netlist, const std::vector<std::string>& outputNodes, double sampleRateHz)
        : Implementation (netlist, outputNodes, makeBuilder (netlist, outputNodes, sampleRateHz), sampleRateHz)
    {}

    Implementation (const Netlist& netlist,
                    const std::vector<std::string>& outputNodes,
                    Built built,
                    double sampleRateHz)
        : network (std::move (built.builder), netlist, findOperatingPoint (netlist), built.isInjected, sampleRateHz),
          knobs (network.builder().knobs(), rampStepsWithin (LinearCircuit::rampSeconds, sampleRateHz)),
          hold (holdSamples (sampleRateHz)),
          sources (netlist.sources),
          taps (netlist.sources.size()),
          results (outputNodes.size())
    {
        if (! network.build (knobs.values()))
            throw Error (sentenceFor ({ NetworkFault::Kind::valuesTooFarApart, {}, {} }));
        network.rest();
        for (const auto& node : outputNodes)
            restingVolts.push_back (network.restingPoint().voltsAt (node));
    }

    NonlinearNetwork network;
    KnobBank knobs;
    int hold = 1;              ///< samples from one step of the ramps to the next
    int heldSamples = 0;       ///< of them still to go
    bool needsRebuild = false; ///< a knob has jumped
    std::vector<SourcePort> sources;
    std::vector<double> taps, results; ///< of one frame
    std::vector<double> restingVolts;
};

NonlinearCircuit::NonlinearCircuit (const Netlist& netlist,
                                    const std::vector<std::string>& outputNodes,
                                    double sampleRateHz)
    : implementation_ (std::make_unique<Implementation> (netlist, outputNodes, sampleRateHz))
{}

NonlinearCircuit::~NonlinearCircuit() = default;

int NonlinearCircuit::sourceCount() const noexcept
{
    return implementation_->network.tapCount();
}

int NonlinearCircuit::outputCount() const noexcept
{
    return implementation_->network.outputCount();
}

int NonlinearCircuit::stateCount() const noexcept
{
    return implementation_->network.builder().stateCount();
}

const OperatingPoint& NonlinearCircuit::operatingPoint() const noexcept
{
    return implementation_->network.restingPoint();
}

double NonlinearCircuit::restingVolts (int output) const noexcept
{
    return implementation_->restingVolts[at (output)];
}

bool NonlinearCircuit::takesCurrent() const noexcept
{
    return implementation_->network.isInjected();
}

long NonlinearCircuit::fallbackCount() const noexcept
{
    return implementation_->network.fallbackCount();
}

int NonlinearCircuit::knobCount() const noexcept
{
    return implementation_->network.builder().knobs().size();
}

std::optional<int> NonlinearCircuit::findKnob (const PartKnob& knob) const
{
    return implementation_->network.builder().knobs().find (knob.part, knob.kind);
}

void NonlinearCircuit::setKnobTarget (int knobIndex, double value) noexcept
{
    implementation_->knobs.setTarget (knobIndex, value);
}

void NonlinearCircuit::setKnobNow (int knobIndex, double value) noexcept
{
    if (! implementation_->knobs.setNow (knobIndex, value))
        return;
    implementation_->needsRebuild = true;
    implementation_->network.dampNextFrame();
}

double NonlinearCircuit::knobValue (int knobIndex) const noexcept
{
    return implementation_->knobs.values()[at (knobIndex)];
}

bool NonlinearCircuit::isMoving() const noexcept
{
    return implementation_->knobs.isMoving();
}

/// Knobs first, then the frame.
void NonlinearCircuit::beginFrame() noexcept
{
    auto& self = *implementation_;
    if (self.heldSamples > 0)
        --self.heldSamples;
    else if (self.knobs.isMoving())
    {
        self.knobs.advance();
        self.heldSamples = self.hold - 1;
        self.needsRebuild = true;
    }
    if (self.needsRebuild)
        self.network.build (self.knobs.values());
    self.needsRebuild = false;
}

void NonlinearCircuit::process (std::span<const double* const> sources,
                                std::span<double* const> outputs,
                                int frameCount) noexcept
{
    auto& self = *implementation_;
    for (int frame = 0; frame < frameCount; ++frame)
    {
        beginFrame();
        for (std::size_t tap = 0; tap < self.taps.size(); ++tap)
            self.taps[tap] = sources[tap][frame];
        self.network.open (self.taps.data());
        self.network.close (0.0, self.results.data());
        for (std::size_t output = 0; output < self.results.size(); ++output)
            outputs[output][frame] = self.results[output];
    }
}

void NonlinearCircuit::openFrame (std::span<const double> tapVolts) noexcept
{
    beginFrame();
    implementation_->network.open (tapVolts.data());
}

NonlinearCircuit::Answer NonlinearCircuit::tryFrame (double injectedAmps) noexcept
{
    return implementation_->network.answer (injectedAmps);
}

void NonlinearCircuit::closeFrame (double injectedAmps, std::span<double> outputs) noexcept
{
    implementation_->network.close (injectedAmps, outputs.data());
}

void NonlinearCircuit::reset() noexcept
{
    auto& self = *implementation_;
    self.knobs.finish();
    self.network.build (self.knobs.values());
    self.network.rest();
    self.needsRebuild = false;
    self.heldSamples = 0;
}

std::vector<std::string> NonlinearCircuit::stateNames() const
{
    return stateNamesOf (implementation_->network.builder());
}

// In this order: states, taps, junctions.
std::vector<int> NonlinearCircuit::adoptionMap (const NonlinearCircuit& other) const
{
    const auto& mine = *implementation_;
    const auto& theirs = *other.implementation_;
    auto map = adoptionMapOf (mine.network.builder(), mine.sources, theirs.network.builder(), theirs.sources);
    const auto& junctions = theirs.network.junctions().names();
    for (const auto& name : mine.network.junctions().names())
    {
        const auto place = std::find (junctions.begin(), junctions.end(), name);
        map.push_back (place == junctions.end() ? -1 : static_cast<int> (place - junctions.begin()));
    }
    return map;
}

void NonlinearCircuit::adoptStates (const NonlinearCircuit& other, std::span<const int> adoptionMap) noexcept
{
    auto& mine = implementation_->network;
    const auto& theirs = std::as_const (other.implementation_->network);
    const auto states = mine.states();
    const std::size_t firstJunction = states.size() + at (mine.tapCount());
    for (std::size_t index = 0; index < adoptionMap.size(); ++index)
    {
        if (adoptionMap[index] < 0)
            continue;
        const auto from = at (adoptionMap[index]);
        if (index < states.size())
            states[index] = theirs.quantity (from);
        else if (index < firstJunction)
            mine.lastSources()[index - states.size()] = theirs.lastSources()[from];
        else
            mine.junctionVolts()[index - firstJunction] = theirs.junctionVolts()[from];
    }
    mine.solveInstant();
    mine.dampNextFrame();
}

} // namespace stopwright
