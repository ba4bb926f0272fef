// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/LinearCircuit.h"

#include "Circuit/CircuitLimits.h"
#include "Circuit/Junction.h"
#include "Circuit/KnobBank.h"
#include "Circuit/NetlistCheck.h"
#include "Circuit/NodeMap.h"
#include "Circuit/SteppedNetwork.h"
#include "Units/Error.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stopwright
{

namespace
{

/// While a knob moves, the matrices stand still for no longer than this: the steps of a sine through the ramp then lie
/// more than 60 dB below it.
constexpr double longestHoldSeconds = 1e-4;

std::size_t at (int index) noexcept
{
    return static_cast<std::size_t> (index);
}

/// The longest power of two within the hold time: 16 samples at 176.4 and 192 kHz.
int holdSamples (double sampleRateHz) noexcept
{
    int samples = 1;
    while (2 * samples <= longestHoldSeconds * sampleRateHz && samples < 1024)
        samples *= 2;
    return samples;
}

int rampSteps (double sampleRateHz) noexcept
{
    return std::max (1, static_cast<int> (LinearCircuit::rampSeconds * sampleRateHz / holdSamples (sampleRateHz)));
}

void requireOutputs (const Netlist& netlist, const std::vector<std::string>& outputNodes)
{
    if (outputNodes.size() > at (CircuitLimits::outputs))
        throw Error ("At most " + std::to_string (CircuitLimits::outputs) + " nodes can be listened to at once, not "
                     + std::to_string (outputNodes.size()) + "; leave some out.");
    const NodeMap nodes (netlist);
    for (const auto& name : outputNodes)
        if (nodes.find (name) == NodeMap::unknown)
            throw Error ("There is no node '" + name
                         + "' in the network to listen to; name a node that a part touches.");
}

StateSpaceBuilder makeBuilder (const Netlist& netlist, const std::vector<std::string>& outputNodes, double sampleRateHz)
{
    if (! (sampleRateHz > 0.0) || ! std::isfinite (sampleRateHz))
        throw Error ("A sample rate of " + std::to_string (sampleRateHz) + " Hz cannot be used; give a positive one.");
    requireSound (netlist);
    if (hasDevices (netlist))
        throw Error ("The network has diodes, transistors or supplies, which a linear circuit cannot run; run it as a "
                     "nonlinear one.");
    requireOutputs (netlist, outputNodes);
    StateSpaceBuilder builder (netlist, outputNodes);
    if (builder.fault())
        throw Error (sentenceFor (builder.fault()));
    return builder;
}

/// Index of the first element whose name is `name`, or -1.
int indexByName (const auto& list, const std::string& name)
{
    const auto found = std::find_if (list.begin(), list.end(), [&] (const auto& item) { return item.name == name; });
    return found == list.end() ? -1 : static_cast<int> (found - list.begin());
}

} // namespace

struct LinearCircuit::Implementation
{
    Implementation (const Netlist& netlist, const std::vector<std::string>& outputNodes, double sampleRateHz)
        : network (makeBuilder (netlist, outputNodes, sampleRateHz), sampleRateHz),
          knobs (network.builder().knobs(), rampSteps (sampleRateHz)),
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
    std::vector<std::string> names;
    names.reserve (at (stateCount()));
    for (int state = 0; state < stateCount(); ++state)
        names.push_back (implementation_->network.builder().quantities()[at (state)].name);
    return names;
}

std::vector<int> LinearCircuit::adoptionMap (const LinearCircuit& other) const
{
    std::vector<int> map;
    map.reserve (at (stateCount() + sourceCount()));
    for (const auto& name : stateNames())
        map.push_back (indexByName (other.implementation_->network.builder().quantities(), name));
    for (const auto& source : implementation_->sources)
        map.push_back (indexByName (other.implementation_->sources, source.name));
    return map;
}

void LinearCircuit::adoptStates (const LinearCircuit& other, std::span<const int> adoptionMap) noexcept
{
    auto& mine = implementation_->network;
    const auto& theirs = std::as_const (other.implementation_->network);
    const auto states = mine.states();
    for (std::size_t index = 0; index < adoptionMap.size(); ++index)
    {
        if (adoptionMap[index] < 0)
            continue;
        const auto from = at (adoptionMap[index]);
        if (index < states.size())
            states[index] = theirs.quantity (from);
        else
            mine.lastSources()[index - states.size()] = theirs.lastSources()[from];
    }
    mine.dampNextSample();
}

double LinearCircuit::storedEnergy() const noexcept
{
    return implementation_->network.storedEnergy (implementation_->knobs.values());
}

} // namespace stopwright
