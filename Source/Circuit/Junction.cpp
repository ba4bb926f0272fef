// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/Junction.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr std::array<Junction, 1> ofDiode { { { 0, 1, "" } } };
constexpr std::array<Junction, 2> ofNpn { { { 1, 2, ".be" }, { 1, 0, ".bc" } } };
constexpr std::array<Junction, 2> ofPnp { { { 2, 1, ".be" }, { 0, 1, ".bc" } } };

} // namespace

std::span<const Junction> junctionsOf (const PartValue& value) noexcept
{
    if (std::holds_alternative<Diode> (value))
        return ofDiode;
    if (std::holds_alternative<Npn> (value))
        return ofNpn;
    if (std::holds_alternative<Pnp> (value))
        return ofPnp;
    return {};
}

bool hasDevices (const Netlist& netlist) noexcept
{
    return std::any_of (netlist.parts.begin(), netlist.parts.end(),
                        [] (const Part& part)
                        { return ! junctionsOf (part.value).empty() || std::holds_alternative<Supply> (part.value); });
}

} // namespace stopwright
