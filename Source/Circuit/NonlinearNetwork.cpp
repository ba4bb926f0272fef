// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NonlinearNetwork.h"

#include "Circuit/NetworkQuantity.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stopwright
{

namespace
{

std::size_t at (int index) noexcept
{
    return static_cast<std::size_t> (index);
}

int portCountOf (const StateSpaceBuilder& builder, const Netlist& netlist)
{
    const auto supplies = std::count_if (netlist.parts.begin(), netlist.parts.end(),
                                         [] (const Part& part) { return std::holds_alternative<Supply> (part.value); });
    return builder.sourceCount() - static_cast<int> (netlist.sources.size()) - static_cast<int> (supplies);
}

} // namespace

NonlinearNetwork::NonlinearNetwork (StateSpaceBuilder builder,
                                    const Netlist& netlist,
                                    OperatingPoint point,
                                    bool isInjected,
                                    double sampleRateHz)
    : builder_ (std::move (builder)),
      network_ (builder_.makeStateSpace()),
      point_ (std::move (point)),
      solver_ (JunctionBank (netlist)),
      tapCount_ (static_cast<int> (netlist.sources.size())),
      outputCount_ (builder_.outputCount() - portCountOf (builder_, netlist)),
      firstPort_ (builder_.sourceCount() - portCountOf (builder_, netlist)),
      isInjected_ (isInjected),
      step_ (network_, portCountOf (builder_, netlist), sampleRateHz),
      ports_ (solver_.makePorts()),
      instantPorts_ (ports_),
      states_ (at (builder_.stateCount()), 0.0),
      lastSources_ (at (builder_.sourceCount()), 0.0),
      present_ (lastSources_),
      middle_ (lastSources_),
      junctionVolts_ (at (solver_.count()), 0.0),
      frame_ (at (step_.frameStorage())),
      openVolts_ (junctionVolts_),
      answerOpen_ (junctionVolts_),
      answerAmps_ (junctionVolts_)
{
    for (std::size_t state = 0; state < states_.size(); ++state)
        restStates_.push_back (point_.storeAt (builder_.quantities()[state].name));
    int source = tapCount_;
    for (const auto& part : netlist.parts)
        if (const auto* supply = std::get_if<Supply> (&part.value))
            present_[at (source++)] = supply->volts;
    rest();
}

void NonlinearNetwork::rest() noexcept
{
    std::copy (restStates_.begin(), restStates_.end(), states_.begin());
    std::fill_n (present_.begin(), tapCount_, 0.0);
    std::copy (present_.begin(), present_.end(), lastSources_.begin());
    std::copy (point_.junctionExcessAmps.begin(), point_.junctionExcessAmps.end(), lastSources_.begin() + firstPort_);
    std::copy (point_.junctionVolts.begin(), point_.junctionVolts.end(), junctionVolts_.begin());
    solver_.settleAt (junctionVolts_);
    isDamped_ = false;
    isSolved_ = false;
}

bool NonlinearNetwork::build (std::span<const double> knobValues) noexcept
{
    if (! builder_.build (knobValues, network_) || ! step_.build (network_))
        return false;
    step_.writeImpedance (ports_.impedance);
    step_.writeInstantImpedance (instantPorts_.impedance);
    solver_.placeKnees (ports_);
    solver_.placeKnees (instantPorts_);
    solveInstant();
    return true;
}

void NonlinearNetwork::solveInstant() noexcept
{
    const auto junctions = static_cast<std::ptrdiff_t> (junctionVolts_.size());
    if (junctions == 0)
        return;
    std::copy (lastSources_.begin(), lastSources_.end(), middle_.begin());
    std::fill_n (middle_.begin() + firstPort_, junctions, 0.0);
    step_.instant (states_.data(), middle_.data(), frame_.data());
    solver_.start (junctionVolts_);
    if (! solver_.solve (frame_.data() + outputCount_, instantPorts_, mostSteps))
        return;
    std::copy_n (solver_.excessAmps().begin(), junctions, lastSources_.begin() + firstPort_);
    std::copy_n (solver_.volts().begin(), junctions, junctionVolts_.begin());
}

void NonlinearNetwork::open (const double* tapVolts) noexcept
{
    std::copy_n (tapVolts, tapCount_, present_.begin());
    isSolved_ = false;
    solver_.start (junctionVolts_);
    if (isDamped_)
        openHalf();
    else
        step_.predict (states_.data(), lastSources_.data(), present_.data(), frame_.data());
    isDamped_ = false;
}

// The first of the two half steps is solved at once, with the injected current of the last frame; what it comes to
// takes the place of the states, so that the second is a frame like any other.
void NonlinearNetwork::openHalf() noexcept
{
    for (std::size_t source = 0; source < middle_.size(); ++source)
        middle_[source] = 0.5 * (lastSources_[source] + present_[source]);
    std::fill (middle_.begin() + firstPort_, middle_.end(), 0.0);
    step_.predictHalf (states_.data(), lastSources_.data(), middle_.data(), frame_.data());
    const double injected = isInjected_ ? lastSources_.back() : 0.0;
    if (! solveFrame (injected))
        ++fallbackCount_;
    for (int state = 0; state < static_cast<int> (states_.size()); ++state)
        states_[at (state)] = entry (step_.frameSize() - static_cast<int> (states_.size()) + state, injected);
    std::copy (solver_.excessAmps().begin(), solver_.excessAmps().end(), middle_.begin() + firstPort_);
    if (isInjected_)
        middle_.back() = injected;
    std::fill (present_.begin() + firstPort_, present_.end(), 0.0);
    step_.predictHalf (states_.data(), middle_.data(), present_.data(), frame_.data());
    isSolved_ = false;
}

bool NonlinearNetwork::solveFrame (double injectedAmps) noexcept
{
    if (isSolved_ && injectedAmps == solvedAmps_)
        return isSound_;
    for (int junction = 0; junction < solver_.count(); ++junction)
    {
        const int place = outputCount_ + junction;
        openVolts_[at (junction)] = frame_.data()[place];
        if (isInjected_)
            openVolts_[at (junction)] += step_.response (place, solver_.count()) * injectedAmps;
    }
    isSound_ = solver_.solve (openVolts_.data(), ports_, mostSteps);
    solvedAmps_ = injectedAmps;
    isSolved_ = true;
    return isSound_;
}

/// An entry of the frame with the junctions' and the injected currents put in.
double NonlinearNetwork::entry (int index, double injectedAmps) const noexcept
{
    double sum = frame_.data()[index];
    const auto excess = solver_.excessAmps();
    for (int junction = 0; junction < solver_.count(); ++junction)
        sum += step_.response (index, junction) * excess[at (junction)];
    return isInjected_ ? sum + step_.response (index, solver_.count()) * injectedAmps : sum;
}

NonlinearNetwork::Answer NonlinearNetwork::answer (double injectedAmps) noexcept
{
    solveFrame (injectedAmps);
    Answer answer { entry (0, injectedAmps), 0.0 };
    if (! isInjected_)
        return answer;
    const int injection = solver_.count();
    for (int junction = 0; junction < solver_.count(); ++junction)
        answerOpen_[at (junction)] = step_.response (outputCount_ + junction, injection);
    solver_.follow (answerOpen_.data(), ports_, answerAmps_.data());
    answer.ohms = step_.response (0, injection);
    for (int junction = 0; junction < solver_.count(); ++junction)
        answer.ohms += step_.response (0, junction) * answerAmps_[at (junction)];
    return answer;
}

void NonlinearNetwork::close (double injectedAmps, double* outputs) noexcept
{
    if (! solveFrame (injectedAmps))
        ++fallbackCount_;
    double size = std::abs (injectedAmps);
    for (int output = 0; output < outputCount_; ++output)
        size += std::abs (outputs[output] = entry (output, injectedAmps));
    const int firstState = step_.frameSize() - static_cast<int> (states_.size());
    for (int state = 0; state < static_cast<int> (states_.size()); ++state)
        size += std::abs (states_[at (state)] = entry (firstState + state, injectedAmps));
    std::copy (present_.begin(), present_.end(), lastSources_.begin());
    for (int junction = 0; junction < solver_.count(); ++junction)
    {
        lastSources_[at (firstPort_ + junction)] = solver_.excessAmps()[at (junction)];
        junctionVolts_[at (junction)] = solver_.volts()[at (junction)];
    }
    if (isInjected_)
        lastSources_.back() = injectedAmps;
    isSolved_ = false;
    if (size <= runaway)
        return;

    // Not finite, or no voltage of this world: the network starts over from where it rests.
    ++fallbackCount_;
    rest();
    step_.instant (states_.data(), lastSources_.data(), frame_.data());
    std::copy_n (frame_.data(), outputCount_, outputs);
}

double NonlinearNetwork::quantity (std::size_t index) const noexcept
{
    return valueOf (builder_.quantities()[index], network_, states_, lastSources_);
}

} // namespace stopwright
