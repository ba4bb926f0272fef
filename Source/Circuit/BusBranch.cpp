// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/BusBranch.h"

#include "Circuit/CheckedBuilder.h"
#include "Circuit/KnobHold.h"
#include "Circuit/LinearCircuit.h"
#include "Circuit/NetlistCheck.h"
#include "Circuit/NetworkFault.h"
#include "Circuit/StateAdoption.h"
#include "Units/Error.h"

#include <algorithm>
#include <string>

namespace stopwright
{

namespace
{

bool hasName (const Netlist& netlist, const std::string& name)
{
    const auto isIt = [&name] (const auto& item) { return item.name == name; };
    return std::ranges::any_of (netlist.parts, isIt) || std::ranges::any_of (netlist.sources, isIt);
}

int holdBlocks (double sampleRateHz) noexcept
{
    return std::max (1, holdSamples (sampleRateHz) / BusBranch::length);
}

int blocksWithin (double seconds, double sampleRateHz) noexcept
{
    return std::max (1, static_cast<int> (seconds * sampleRateHz / BusBranch::length));
}

/// The network must be sound by itself: the mixing resistor would lend a node to an output that is nowhere.
Netlist onBus (Netlist netlist, double mixingOhms)
{
    requireSound (netlist);
    std::string name = "mixing resistor";
    while (hasName (netlist, name))
        name += "'";
    netlist.sources.push_back ({ name, netlist.output, mixingOhms });
    return netlist;
}

} // namespace

BusBranch::BusBranch (const Netlist& netlist, double mixingOhms, double sampleRateHz)
    : sources_ (onBus (netlist, mixingOhms).sources),
      network_ (checkedBuilder (onBus (netlist, mixingOhms), { netlist.output }, sampleRateHz), sampleRateHz),
      knobs_ (network_.builder().knobs(),
              holdBlocks (sampleRateHz) * rampStepsWithin (LinearCircuit::rampSeconds, sampleRateHz)),
      mixingKnob_ (network_.builder().knobs().indexOf (sources_.back().name, KnobKind::sourceOhms)),
      block_ (network_.builder().stateCount(), network_.builder().sourceCount()),
      holdBlocks_ (holdBlocks (sampleRateHz))
{
    if (mixingKnob_ < 0)
        throw Error ("A mixing resistor of " + std::to_string (mixingOhms) + " ohm cannot be; give it more than zero.");
    knobs_.setStepCount (mixingKnob_, blocksWithin (mixingRampSeconds, sampleRateHz));
    if (! network_.build (knobs_.values()))
        throw Error (sentenceFor ({ NetworkFault::Kind::valuesTooFarApart, {}, {} }));
    rebuild();
}

void BusBranch::rebuild() noexcept
{
    network_.build (knobs_.values());
    block_.build (network_.step());
    conductance_ = 1.0 / knobs_.values()[static_cast<std::size_t> (mixingKnob_)];
}

std::optional<int> BusBranch::findKnob (const PartKnob& knob) const
{
    const auto found = network_.builder().knobs().find (knob.part, knob.kind);
    return found == mixingKnob_ ? std::nullopt : found;
}

bool BusBranch::moveKnobs() noexcept
{
    const bool isFine = knobs_.isMoving (mixingKnob_);
    if (heldBlocks_ > 0 && ! isFine)
    {
        --heldBlocks_;
        return false;
    }
    if (! knobs_.isMoving())
        return false;
    const int blocks = isFine ? 1 : holdBlocks_;
    for (int block = 0; block < blocks; ++block)
        knobs_.advance();
    rebuild();
    heldBlocks_ = blocks - 1;
    return true;
}

double BusBranch::presentFree() const noexcept
{
    const auto& c = network_.step().c();
    const auto& d = network_.step().d();
    const auto states = network_.states();
    const auto sources = network_.lastSources();
    double volts = 0.0;
    for (std::size_t state = 0; state < states.size(); ++state)
        volts += c (0, static_cast<Eigen::Index> (state)) * states[state];
    for (std::size_t source = 0; source + 1 < sources.size(); ++source)
        volts += d (0, static_cast<Eigen::Index> (source)) * sources[source];
    return volts;
}

double BusBranch::presentKernel() const noexcept
{
    return network_.step().d() (0, sourceCount());
}

void BusBranch::begin() noexcept
{
    block_.begin (network_.states().data(), network_.lastSources().data(), free_);
}

void BusBranch::finish (const Samples& busVolts) noexcept
{
    block_.finish (busVolts, network_.states().data(), network_.lastSources().data());
}

void BusBranch::reset() noexcept
{
    knobs_.finish();
    rebuild();
    network_.reset();
    heldBlocks_ = 0;
}

std::vector<int> BusBranch::adoptionMap (const BusBranch& other) const
{
    return adoptionMapOf (network_.builder(), sources_, other.network_.builder(), other.sources_);
}

void BusBranch::adoptStates (const BusBranch& other, std::span<const int> adoptionMap) noexcept
{
    adoptStatesOf (other.network_, adoptionMap, network_);
}

} // namespace stopwright
