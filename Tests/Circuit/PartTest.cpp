// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/Part.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

TEST (Part, KindsHaveTheirNamesAndLeads)
{
    EXPECT_EQ (kindName (Resistor {}), "resistor");
    EXPECT_EQ (kindName (Capacitor {}), "capacitor");
    EXPECT_EQ (kindName (Inductor {}), "inductor");
    EXPECT_EQ (kindName (Potentiometer {}), "potentiometer");
    EXPECT_EQ (kindName (Switch {}), "switch");
    EXPECT_EQ (kindName (OpAmp {}), "op-amp");
    EXPECT_EQ (kindName (Diode {}), "diode");
    EXPECT_EQ (kindName (Npn {}), "npn transistor");
    EXPECT_EQ (kindName (Pnp {}), "pnp transistor");
    EXPECT_EQ (kindName (Supply {}), "supply");
    EXPECT_EQ (leadCount (Inductor {}), 2U);
    EXPECT_EQ (leadCount (Diode {}), 2U);
    EXPECT_EQ (leadCount (Npn {}), 3U);
    EXPECT_EQ (leadCount (Pnp {}), 3U);
    EXPECT_EQ (leadCount (Supply {}), 2U);
    EXPECT_EQ (leadCount (Switch {}), 2U);
    EXPECT_EQ (leadCount (Potentiometer {}), 3U);
    EXPECT_EQ (leadCount (OpAmp {}), 3U);
}

} // namespace
} // namespace stopwright
