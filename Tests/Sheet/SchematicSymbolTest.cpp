// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SchematicSymbol.h"

#include "Sheet/SymbolLeads.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

const std::vector<PartValue> everyKind { Resistor {},      Capacitor {},    Inductor {}, Potentiometer {},
                                         Switch { false }, Switch { true }, OpAmp {},    Diode {},
                                         Npn {},           Pnp {},          Supply {} };

bool hasEndAt (const SymbolStrokes& strokes, DrawingPoint at)
{
    const auto isThere = [&] (DrawingPoint point) { return std::hypot (point.x - at.x, point.y - at.y) < 0.01; };
    return std::any_of (strokes.lines.begin(), strokes.lines.end(),
                        [&] (const DrawnLine& line)
                        { return ! line.isClosed && (isThere (line.points.front()) || isThere (line.points.back())); });
}

} // namespace

TEST (SchematicSymbol, LeadsEndWhereWiresBegin)
{
    const DrawingPoint middle { 100.0, 60.0 };
    for (const auto& kind : everyKind)
        for (const int turns : { 0, 1, 2, 3 })
            for (const bool isMirrored : { false, true })
            {
                const SymbolPose pose { turns, isMirrored };
                const auto strokes = SchematicSymbol::of (kind, pose, middle);
                for (const auto& lead : symbolLeads (kind))
                {
                    const auto at = SheetGrid::toPoints (pose.apply (lead.end));
                    EXPECT_TRUE (hasEndAt (strokes, { middle.x + at.x, middle.y + at.y })) << kindName (kind);
                }
            }
}

TEST (SchematicSymbol, StaysInsideItsRing)
{
    for (const auto& kind : everyKind)
        for (const auto& line : SchematicSymbol::of (kind, {}, {}).lines)
            for (const auto& point : line.points)
                EXPECT_LE (std::max (std::abs (point.x), std::abs (point.y)), SheetGrid::ringRadius) << kindName (kind);
}

TEST (SchematicSymbol, HasOneStrokePerLoopOfACoilAndAZigzagOnRequest)
{
    EXPECT_EQ (SchematicSymbol::of (Inductor {}, {}, {}).lines.size(), 6U);
    const auto corners = [] (ResistorSign sign)
    { return SchematicSymbol::of (Resistor {}, {}, {}, Ink::ink, sign).lines.back().points.size(); };
    EXPECT_EQ (corners (ResistorSign::rectangle), 4U);
    EXPECT_EQ (corners (ResistorSign::zigzag), 8U);
}

TEST (SchematicSymbol, TurnsClockwise)
{
    const SymbolPose upright { 1, false };
    EXPECT_EQ (upright.apply (GridPoint { -2, 0 }), (GridPoint { 0, -2 })); // the first lead comes to the top
    EXPECT_EQ (upright.apply (GridPoint { 0, -2 }), (GridPoint { 2, 0 }));  // a wiper to the right
    const SymbolPose reversed { 2, true };
    EXPECT_EQ (reversed.apply (GridPoint { -2, -1 }), (GridPoint { 2, -1 })); // what is above stays above
}

} // namespace stopwright
