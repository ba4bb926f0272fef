// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/OperatingPoint.h"

#include "Circuit/FindingWords.h"
#include "Circuit/RestingNetwork.h"
#include "Units/Error.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace stopwright
{

namespace
{

using Region = OperatingPoint::Region;

double find (const std::vector<std::pair<std::string, double>>& list, std::string_view name) noexcept
{
    const auto place =
        std::find_if (list.begin(), list.end(), [name] (const auto& entry) { return entry.first == name; });
    return place == list.end() ? 0.0 : place->second;
}

/// A junction carries noticeably more than its saturation current.
bool isOn (double volts, double exponentVolts)
{
    constexpr double noticeable = 2.4; // e^2.4 = 11
    return volts > noticeable * exponentVolts;
}

Region regionOf (const PartValue& value, const double* volts)
{
    if (const auto* diode = std::get_if<Diode> (&value))
        return isOn (volts[0], diode->emissionCoefficient * JunctionLaw::thermalVolts) ? Region::conducting
                                                                                       : Region::blocking;
    const bool emitterOn = isOn (volts[0], JunctionLaw::thermalVolts);
    const bool collectorOn = isOn (volts[1], JunctionLaw::thermalVolts);
    if (! emitterOn)
        return collectorOn ? Region::reversed : Region::cutOff;
    const bool isLow = volts[0] - volts[1] < JunctionLaw::thermalVolts * std::log (100.0);
    return collectorOn && isLow ? Region::saturated : Region::active;
}

/// Writes down what the solved network says.
class PointWriter
{
public:
    PointWriter (const Netlist& netlist, const RestingNetwork& network) : network_ (network)
    {
        writeNodes();
        const auto& solver = network.solver();
        point.junctionVolts.assign (solver.volts().begin(), solver.volts().end());
        point.junctionExcessAmps.assign (solver.excessAmps().begin(), solver.excessAmps().end());
        for (const auto& slope : solver.slopes())
            point.slopes.push_back ({ slope.own + junctionSiemens, slope.cross });
        for (const auto& part : netlist.parts)
            writePart (part);
    }

    OperatingPoint point;

private:
    void writeNodes()
    {
        const auto& nodes = network_.equations().nodes();
        for (int node = 0; node < nodes.count(); ++node)
            for (const auto& name : nodes.members (node))
                point.nodeVolts.emplace_back (name, network_.unknown (node));
    }

    double across (const Part& part) const { return point.voltsAt (part.nodes[0]) - point.voltsAt (part.nodes[1]); }

    double branchAmps (const Part& part) const
    {
        const int branch = network_.equations().findBranch (part.name);
        return branch < 0 ? 0.0 : network_.unknown (branch);
    }

    void writePart (const Part& part)
    {
        if (std::holds_alternative<Capacitor> (part.value))
            point.stores.emplace_back (part.name, across (part));
        else if (std::holds_alternative<Inductor> (part.value))
        {
            point.stores.emplace_back (part.name, branchAmps (part));
            point.stores.emplace_back (part.name + ".self", across (part));
        }
        else if (std::holds_alternative<OpAmp> (part.value))
            point.stores.emplace_back (part.name, point.voltsAt (part.nodes[2]));
        else if (std::holds_alternative<Supply> (part.value))
        {
            const double amps = branchAmps (part);
            point.devices.push_back ({ part.name, Region::supplying, { amps, -amps } });
        }
        else
            writeJunctions (part);
    }

    void writeJunctions (const Part& part)
    {
        const auto junctions = junctionsOf (part.value);
        if (junctions.empty())
            return;
        std::vector<double> leadAmps (part.nodes.size(), 0.0);
        const std::size_t first = nextJunction_;
        for (const auto& junction : junctions)
        {
            const double amps =
                point.junctionExcessAmps[nextJunction_] + junctionSiemens * point.junctionVolts[nextJunction_];
            leadAmps[junction.from] += amps;
            leadAmps[junction.to] -= amps;
            ++nextJunction_;
        }
        point.devices.push_back ({ part.name, regionOf (part.value, &point.junctionVolts[first]), leadAmps });
    }

    const RestingNetwork& network_;
    std::size_t nextJunction_ = 0;
};

} // namespace

double OperatingPoint::voltsAt (std::string_view node) const noexcept
{
    return find (nodeVolts, node);
}

double OperatingPoint::storeAt (std::string_view name) const noexcept
{
    return find (stores, name);
}

OperatingPointSearch searchOperatingPoint (const Netlist& netlist)
{
    if (! hasDevices (netlist))
        return { OperatingPoint {}, {}, {} };

    RestingNetwork network (netlist);
    if (const auto& open = network.undecided(); ! open.empty())
        return { {},
                 open,
                 "The network has no resting point: nothing decides what " + open
                     + " does at 0 Hz; give it a path for direct current, a coil its winding resistance, an op-amp "
                       "feedback through a resistor." };
    if (! network.settle())
    {
        const auto& part = network.solver().bank().partOf (network.solver().restless());
        return { {},
                 part,
                 "No resting point was found for the network: " + partWords (part)
                     + " does not settle; check how it is biased and its supply." };
    }
    return { std::move (PointWriter (netlist, network).point), {}, {} };
}

OperatingPoint findOperatingPoint (const Netlist& netlist)
{
    auto search = searchOperatingPoint (netlist);
    if (! search.point)
        throw Error (search.sentence);
    return std::move (*search.point);
}

std::string_view regionWords (OperatingPoint::Region region) noexcept
{
    constexpr std::array<std::string_view, 7> words { "supplying", "blocking",  "conducting", "cut off",
                                                      "active",    "saturated", "reversed" };
    return words[static_cast<std::size_t> (region)];
}

} // namespace stopwright
