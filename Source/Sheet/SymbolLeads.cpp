// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SymbolLeads.h"

namespace stopwright
{

namespace
{

constexpr int reach = SheetGrid::leadSteps;
constexpr SymbolLead leftLead { { -reach, 0 }, { -1, 0 } };
constexpr SymbolLead rightLead { { reach, 0 }, { 1, 0 } };

} // namespace

std::vector<SymbolLead> symbolLeads (const PartValue& value)
{
    if (std::holds_alternative<Potentiometer> (value))
        return { leftLead, { { 0, -reach }, { 0, -1 } }, rightLead };
    if (std::holds_alternative<OpAmp> (value))
        return { { { -reach, 1 }, { -1, 0 } }, { { -reach, -1 }, { -1, 0 } }, rightLead };
    if (transistorIn (value) != nullptr)
        return { { { 1, -reach }, { 0, -1 } }, leftLead, { { 1, reach }, { 0, 1 } } };
    return { leftLead, rightLead };
}

SymbolLead tapLead()
{
    return rightLead;
}

SymbolLead outputLead()
{
    return { { -1, 0 }, { -1, 0 } };
}

} // namespace stopwright
