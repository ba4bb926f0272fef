// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/StopPort.h"

#include "Circuit/NetlistCheck.h"

#include <algorithm>
#include <string>

namespace stopwright
{

namespace
{

/// The network with one source more, which looks into its output through `ohms`. It must be sound without it.
Netlist withProbe (Netlist netlist, double ohms)
{
    requireSound (netlist);
    std::string name = "probe";
    const auto isTaken = [&name] (const auto& item) { return item.name == name; };
    while (std::ranges::any_of (netlist.parts, isTaken) || std::ranges::any_of (netlist.sources, isTaken))
        name += "'";
    netlist.sources.push_back ({ name, netlist.output, ohms });
    return netlist;
}

} // namespace

StopPort::StopPort (const Card& card, double expectedOhms)
    : probeOhms_ (expectedOhms),
      response_ (withProbe (netlistOf (card), expectedOhms), card.output)
{}

// Through R, the probe is heard at the output as Z / (Z + R), and a tap as R / (Z + R) of its unloaded volts.
const StopPort::Equivalent& StopPort::at (double frequencyHz) const
{
    const auto known = kept_.find (frequencyHz);
    if (known != kept_.end())
        return known->second;
    auto gains = response_.at (frequencyHz);
    const std::complex<double> unheard = 1.0 - gains.back();
    const Equivalent equivalent { {}, probeOhms_ * gains.back() / unheard };
    gains.pop_back();
    for (auto& gain : gains)
        gain /= unheard;
    return kept_.emplace (frequencyHz, Equivalent { std::move (gains), equivalent.ohms }).first->second;
}

} // namespace stopwright
