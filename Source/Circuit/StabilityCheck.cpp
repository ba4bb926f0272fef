// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/StabilityCheck.h"

#include "Circuit/FindingWords.h"
#include "Circuit/NaturalModes.h"
#include "Units/Engineering.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace stopwright
{

namespace
{

/// Growth that is more than rounding: e-fold in less than 10^4 s, and in less than 1.6e8 periods.
bool grows (const NaturalMode& mode)
{
    constexpr double leastRate = 1e-4;
    constexpr double leastShare = 1e-9;
    return mode.frequency.real() > leastRate + leastShare * std::abs (mode.frequency);
}

/// The fastest growing mode, if one grows.
std::optional<NaturalMode> findGrowth (const NodalEquations& equations)
{
    std::optional<NaturalMode> worst;
    for (const auto& mode : naturalModes (equations))
        if (grows (mode) && (! worst || mode.frequency.real() > worst->frequency.real()))
            worst = mode;
    return worst;
}

/// Op-amps whose output moves in this mode.
std::vector<std::string> opAmpsIn (const NaturalMode& mode, const Netlist& netlist, const NodalEquations& equations)
{
    constexpr double noticeable = 1e-3;
    std::vector<std::pair<std::string, double>> movements;
    double largest = 0.0;
    for (const auto& part : netlist.parts)
    {
        if (! std::holds_alternative<OpAmp> (part.value))
            continue;
        const int node = equations.nodes().find (part.nodes[2]);
        const double movement = node < 0 ? 0.0 : std::abs (mode.solution[static_cast<std::size_t> (node)]);
        largest = std::max (largest, movement);
        movements.emplace_back (part.name, movement);
    }
    std::vector<std::string> names;
    for (const auto& [name, movement] : movements)
        if (movement > noticeable * largest)
            names.push_back (name);
    return names;
}

void reportGrowth (const NaturalMode& mode,
                   const Netlist& netlist,
                   const NodalEquations& equations,
                   FindingList& findings)
{
    const auto names = opAmpsIn (mode, netlist, equations);
    const double frequencyHz = std::abs (mode.frequency.imag()) / (2.0 * std::numbers::pi);
    const bool oscillates = std::abs (mode.frequency.imag()) > 1e-6 * std::abs (mode.frequency);
    const auto how =
        oscillates ? "oscillates by itself at " + formatForReading (frequencyHz, Quantity::frequency)
                   : "runs away by itself, e-fold in " + formatForReading (1.0 / mode.frequency.real(), Quantity::time);
    const auto loop = names.empty() ? std::string ("its parts") : partsWords (names);
    findings.addError (names.empty() ? std::string_view() : std::string_view (names.front()),
                       "The network " + how + ": the feedback round " + loop
                           + " is positive and too strong; lower its gain or swap the plus and minus inputs.");
}

bool isIdeal (const Part& part)
{
    const auto* amplifier = std::get_if<OpAmp> (&part.value);
    return amplifier != nullptr && ! amplifier->gainBandwidthHz;
}

/// The same network with those ideal op-amps that `isChosen` slowed down to a wide bandwidth.
template <typename Predicate>
Netlist withBandwidth (Netlist netlist, Predicate isChosen)
{
    constexpr double wideHz = 1e9;
    for (auto& part : netlist.parts)
        if (isIdeal (part) && isChosen (part))
            std::get<OpAmp> (part.value).gainBandwidthHz = wideHz;
    return netlist;
}

/// Whether a mode grows that is fast and clearly so; bandwidths of real op-amps cost every loop a little damping.
bool growsClearly (const Netlist& netlist, const std::vector<JunctionSlope>& slopes)
{
    constexpr double clearShare = 1e-2;
    const auto growth = findGrowth (NodalEquations (netlist, slopes));
    return growth && growth->frequency.real() > clearShare * std::abs (growth->frequency);
}

void checkInputOrder (const Netlist& netlist, const std::vector<JunctionSlope>& slopes, FindingList& findings)
{
    if (! growsClearly (withBandwidth (netlist, [] (const Part&) { return true; }), slopes))
        return;
    std::vector<std::string> culprits;
    std::vector<std::string> ideal;
    for (const auto& part : netlist.parts)
    {
        if (! isIdeal (part))
            continue;
        ideal.push_back (part.name);
        if (growsClearly (withBandwidth (netlist, [&part] (const Part& other) { return other.name == part.name; }),
                          slopes))
            culprits.push_back (part.name);
    }
    const auto& names = culprits.empty() ? ideal : culprits;
    findings.addWarning (
        names.front(),
        "As drawn, " + partsWords (names)
            + " would latch up or oscillate with any real op-amp; check that its plus and minus inputs are not swapped.");
}

} // namespace

void checkStability (const Netlist& netlist, const NodalEquations& equations, FindingList& findings)
{
    if (const auto growth = findGrowth (equations))
        reportGrowth (*growth, netlist, equations, findings);
    else if (std::any_of (netlist.parts.begin(), netlist.parts.end(), isIdeal))
        checkInputOrder (netlist, equations.slopes(), findings);
}

} // namespace stopwright
