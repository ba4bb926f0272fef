// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/JunctionBank.h"

namespace stopwright
{

JunctionBank::JunctionBank (const Netlist& netlist)
{
    for (const auto& part : netlist.parts)
    {
        const auto junctions = junctionsOf (part.value);
        if (junctions.empty())
            continue;
        const int first = count();
        for (std::size_t index = 0; index < junctions.size(); ++index)
        {
            names_.push_back (part.name + std::string (junctions[index].suffix));
            parts_.push_back (part.name);
            lawOf_.push_back (static_cast<int> (laws_.size()));
            partners_.push_back (junctions.size() == 1 ? -1 : first + (index == 0 ? 1 : 0));
        }
        if (const auto* diode = std::get_if<Diode> (&part.value))
            laws_.emplace_back (*diode);
        else
            laws_.emplace_back (*transistorIn (part.value));
    }
}

void JunctionBank::evaluate (const double* volts, double* excessAmps, JunctionSlope* slopes) const noexcept
{
    std::size_t junction = 0;
    for (const auto& law : laws_)
    {
        double own[2] = {};
        double cross[2] = {};
        law.evaluate (volts + junction, excessAmps + junction, own, cross);
        for (int index = 0; index < law.junctionCount(); ++index, ++junction)
        {
            excessAmps[junction] -= junctionSiemens * volts[junction];
            slopes[junction] = { own[index] - junctionSiemens, cross[index] };
        }
    }
}

} // namespace stopwright
