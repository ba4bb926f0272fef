// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Part.h"
#include "Sheet/Drawing.h"
#include "Sheet/SymbolPose.h"
#include "Tone/Wave.h"

#include <vector>

namespace stopwright
{

/// The strokes of a symbol.
struct SymbolStrokes
{
    std::vector<DrawnLine> lines;
    std::vector<DrawnArea> areas;
};

/// Which of the two customary signs of a resistor.
enum class ResistorSign
{
    rectangle, ///< IEC 60617
    zigzag     ///< the older one
};

/// Symbols after IEC 60617: resistor (rectangle, or the older zig-zag), capacitor, inductor of half circles, resistor with
/// sliding contact, make contact open or closed, amplifier triangle with + and -, diode, npn and pnp transistor, cell
/// (its long plate is plus), bar of circuit common. Drawn about (0, 0) with leads to where SymbolLeads puts them, then
/// posed and moved to `middle`. Threading: [any].
class SchematicSymbol
{
public:
    static SymbolStrokes
        of (const PartValue& part, SymbolPose pose, DrawingPoint middle, Ink ink = Ink::ink, ResistorSign sign = {});

    /// A tap: a circle with its wave inside.
    static SymbolStrokes of (const Wave& wave, DrawingPoint middle, Ink ink = Ink::ink);

    /// The output's terminal, a small circle with its lead to the left.
    static SymbolStrokes output (DrawingPoint middle, Ink ink = Ink::ink);

    /// The bar of circuit common or of a rail.
    static SymbolStrokes bar (DrawingPoint middle, Ink ink = Ink::ink);

    /// A junction dot.
    static DrawnArea dot (DrawingPoint middle, Ink ink = Ink::ink);
};

} // namespace stopwright
