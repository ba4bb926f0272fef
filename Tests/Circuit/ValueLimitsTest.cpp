// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ValueLimits.h"

#include "Units/Error.h"

#include <gtest/gtest.h>
#include <limits>

namespace stopwright
{
namespace
{

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double notANumber = std::numeric_limits<double>::quiet_NaN();

TEST (ValueLimits, ContainsItsEndsAndNothingBeyond)
{
    const auto& range = ValueLimits::resistance;
    EXPECT_TRUE (range.contains (1e-3));
    EXPECT_TRUE (range.contains (1e12));
    EXPECT_FALSE (range.contains (0.0));
    EXPECT_FALSE (range.contains (-47e3));
    EXPECT_FALSE (range.contains (1.1e12));
    EXPECT_FALSE (range.contains (infinity));
    EXPECT_FALSE (range.contains (notANumber));
}

TEST (ValueLimits, ZeroAndInfinityMayMeanNone)
{
    EXPECT_TRUE (ValueLimits::sourceResistance.contains (0.0));
    EXPECT_FALSE (ValueLimits::sourceResistance.contains (1e-6));
    EXPECT_TRUE (ValueLimits::selfCapacitance.contains (0.0));
    EXPECT_TRUE (ValueLimits::leak.contains (infinity));
    EXPECT_FALSE (ValueLimits::leak.contains (-infinity));
    EXPECT_FALSE (ValueLimits::leak.contains (0.0));
}

TEST (ValueLimits, ClampsIntoTheRange)
{
    EXPECT_EQ (ValueLimits::resistance.clamp (-5.0), 1e-3);
    EXPECT_EQ (ValueLimits::resistance.clamp (infinity), 1e12);
    EXPECT_EQ (ValueLimits::resistance.clamp (47e3), 47e3);
    EXPECT_EQ (ValueLimits::resistance.clamp (notANumber), 1e-3);
    EXPECT_EQ (ValueLimits::leak.clamp (infinity), infinity);
    EXPECT_EQ (ValueLimits::sourceResistance.clamp (0.0), 0.0);
}

TEST (ValueLimits, RangeOfAKnobBelongsToItsKindOfPart)
{
    EXPECT_EQ (&rangeOf (KnobKind::value, Capacitor {}), &ValueLimits::capacitance);
    EXPECT_EQ (&rangeOf (KnobKind::windingOhms, Inductor {}), &ValueLimits::winding);
    EXPECT_EQ (&rangeOf (KnobKind::position, Potentiometer {}), &ValueLimits::position);
    EXPECT_EQ (&rangeOf (KnobKind::gainBandwidthHz, OpAmp {}), &ValueLimits::gainBandwidth);
    EXPECT_EQ (&rangeOf (KnobKind::seriesOhms, Diode {}), &ValueLimits::seriesResistance);
    EXPECT_EQ (&rangeOf (KnobKind::seriesOhms, Supply {}), &ValueLimits::seriesResistance);
    EXPECT_THROW ((void) rangeOf (KnobKind::seriesOhms, Npn {}), Error);
    EXPECT_THROW ((void) rangeOf (KnobKind::leakOhms, Resistor {}), Error);
    EXPECT_THROW ((void) rangeOf (KnobKind::value, Switch {}), Error);
}

} // namespace
} // namespace stopwright
