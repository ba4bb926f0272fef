// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/Part.h"

namespace stopwright
{

namespace
{

/// The kinds in the order of PartValue.
constexpr std::array<std::string_view, std::variant_size_v<PartValue>> kindNames {
    "resistor", "capacitor", "inductor",       "potentiometer",  "switch",
    "op-amp",   "diode",     "npn transistor", "pnp transistor", "supply"
};

constexpr std::array<std::size_t, std::variant_size_v<PartValue>> leadCounts { 2, 2, 2, 3, 2, 3, 2, 3, 3, 2 };

} // namespace

std::string_view kindName (const PartValue& value) noexcept
{
    return kindNames[value.index()];
}

std::size_t leadCount (const PartValue& value) noexcept
{
    return leadCounts[value.index()];
}

const Transistor* transistorIn (const PartValue& value) noexcept
{
    if (const auto* npn = std::get_if<Npn> (&value))
        return npn;
    return std::get_if<Pnp> (&value);
}

} // namespace stopwright
