// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SchematicSymbol.h"

#include "Sheet/SymbolPen.h"

#include <numbers>

namespace stopwright
{

namespace
{

constexpr double lead = SheetGrid::leadSteps * SheetGrid::step;
constexpr double body = SheetGrid::bodyReach;

void drawTrack (SymbolPen& pen, ResistorSign sign)
{
    pen.line ({ { -lead, 0 }, { -body, 0 } });
    pen.line ({ { body, 0 }, { lead, 0 } });
    if (sign == ResistorSign::rectangle)
        pen.closed ({ { -body, -6 }, { body, -6 }, { body, 6 }, { -body, 6 } });
    else
        pen.line ({ { -17, 0 }, { -14, -6 }, { -8.5, 6 }, { -3, -6 }, { 3, 6 }, { 8.5, -6 }, { 14, 6 }, { 17, 0 } });
}

void draw (SymbolPen& pen, const Resistor&, ResistorSign sign)
{
    drawTrack (pen, sign);
}

void draw (SymbolPen& pen, const Capacitor&, ResistorSign)
{
    pen.line ({ { -lead, 0 }, { -3, 0 } });
    pen.line ({ { -3, -11 }, { -3, 11 } }, 1.8);
    pen.line ({ { 3, -11 }, { 3, 11 } }, 1.8);
    pen.line ({ { 3, 0 }, { lead, 0 } });
}

void draw (SymbolPen& pen, const Inductor&, ResistorSign)
{
    constexpr double radius = body / 4.0;
    pen.line ({ { -lead, 0 }, { -body, 0 } });
    for (int loop = 0; loop < 4; ++loop)
        pen.arc ({ -body + radius * (1 + 2 * loop), 0 }, radius, std::numbers::pi, 2.0 * std::numbers::pi);
    pen.line ({ { body, 0 }, { lead, 0 } });
}

void draw (SymbolPen& pen, const Potentiometer&, ResistorSign sign)
{
    drawTrack (pen, sign);
    pen.line ({ { 0, -lead }, { 0, -7 } });
    pen.area ({ { -3.5, -13.5 }, { 3.5, -13.5 }, { 0, -6.5 } });
}

void draw (SymbolPen& pen, const Switch& contact, ResistorSign)
{
    pen.line ({ { -lead, 0 }, { -11, 0 } });
    pen.line ({ { 11, 0 }, { lead, 0 } });
    if (contact.closed)
        pen.line ({ { -11, 0 }, { 13, -3 } });
    else
        pen.line ({ { -11, 0 }, { 10, -12 } });
}

void draw (SymbolPen& pen, const OpAmp&, ResistorSign)
{
    pen.closed ({ { -15, -20 }, { 18, 0 }, { -15, 20 } });
    pen.line ({ { -lead, -12 }, { -15, -12 } });
    pen.line ({ { -lead, 12 }, { -15, 12 } });
    pen.line ({ { 18, 0 }, { lead, 0 } });
    pen.line ({ { -11.5, -9.5 }, { -5.5, -9.5 } }, 1.1);
    pen.line ({ { -11.5, 9.5 }, { -5.5, 9.5 } }, 1.1);
    pen.line ({ { -8.5, 6.5 }, { -8.5, 12.5 } }, 1.1);
}

void draw (SymbolPen& pen, const Diode&, ResistorSign)
{
    pen.line ({ { -lead, 0 }, { lead, 0 } });
    pen.closed ({ { -8, -9 }, { 8, 0 }, { -8, 9 } });
    pen.line ({ { 8, -9 }, { 8, 9 } }, 1.8);
}

/// Base from the left, collector up, emitter down, as SymbolLeads has them.
void drawTransistor (SymbolPen& pen)
{
    pen.circle ({ 2, 0 }, 16);
    pen.line ({ { -lead, 0 }, { -5, 0 } });
    pen.line ({ { -5, -10 }, { -5, 10 } }, 2.2);
    pen.line ({ { -5, -4 }, { 12, -13 }, { 12, -lead } });
    pen.line ({ { -5, 4 }, { 12, 13 }, { 12, lead } });
}

void draw (SymbolPen& pen, const Npn&, ResistorSign)
{
    drawTransistor (pen);
    pen.area ({ { 10, 12 }, { 5.1, 4.9 + 7.6 }, { 7.9, 5.1 + 2.2 } });
}

void draw (SymbolPen& pen, const Pnp&, ResistorSign)
{
    drawTransistor (pen);
    pen.area ({ { -3.5, 4.8 }, { 1.4, 10.5 }, { 4.2, 5.2 } });
}

void draw (SymbolPen& pen, const Supply&, ResistorSign)
{
    pen.line ({ { -lead, 0 }, { -3, 0 } });
    pen.line ({ { -3, -14 }, { -3, 14 } });
    pen.line ({ { 3, -7 }, { 3, 7 } }, 2.6);
    pen.line ({ { 3, 0 }, { lead, 0 } });
}

std::vector<DrawingPoint> shapeOf (WaveKind kind)
{
    switch (kind)
    {
        case WaveKind::square:
            return { { -10, 0 }, { -10, -7 }, { 0, -7 }, { 0, 7 }, { 10, 7 }, { 10, 0 } };
        case WaveKind::pulse:
            return { { -10, 5 }, { -6, 5 }, { -6, -8 }, { -1, -8 }, { -1, 5 }, { 10, 5 } };
        case WaveKind::staircase:
            return { { -10, 7.5 }, { -10, -7.5 }, { -5, -7.5 }, { -5, -2.5 }, { 0, -2.5 },
                     { 0, 2.5 },   { 5, 2.5 },    { 5, 7.5 },   { 10, 7.5 },  { 10, -7.5 } };
        case WaveKind::rounded:
            return { { -10, 6 },  { -9, 0.5 },  { -7.5, -3.2 }, { -5, -5.4 }, { -2.5, -6.3 }, { 0, -6.6 },
                     { 1, -1.1 }, { 2.5, 2.6 }, { 5, 4.8 },     { 7.5, 5.7 }, { 10, 6 } };
        case WaveKind::triangle:
            return { { -11, 0 }, { -5.5, -7 }, { 5.5, 7 }, { 11, 0 } };
        case WaveKind::sawtooth:
            return { { -10, 0 }, { -10, -7 }, { 10, 7 }, { 10, 0 } };
        case WaveKind::outphased:
            return { { -10, 0 }, { -10, -7 }, { 0, -3 }, { 0, 7 }, { 10, 3 }, { 10, 0 } };
    }
    return {};
}

} // namespace

SymbolStrokes
    SchematicSymbol::of (const PartValue& part, SymbolPose pose, DrawingPoint middle, Ink ink, ResistorSign sign)
{
    SymbolPen pen (pose, middle, ink);
    std::visit ([&] (const auto& value) { draw (pen, value, sign); }, part);
    return pen.take();
}

SymbolStrokes SchematicSymbol::of (const Wave& wave, DrawingPoint middle, Ink ink)
{
    SymbolPen pen ({}, middle, ink);
    pen.circle ({ 0, 0 }, body);
    pen.line ({ { body, 0 }, { lead, 0 } });
    pen.line (shapeOf (wave.kind));
    return pen.take();
}

SymbolStrokes SchematicSymbol::output (DrawingPoint middle, Ink ink)
{
    SymbolPen pen ({}, middle, ink);
    pen.circle ({ 0, 0 }, 3.5);
    pen.line ({ { -SheetGrid::step, 0 }, { -3.5, 0 } });
    return pen.take();
}

SymbolStrokes SchematicSymbol::bar (DrawingPoint middle, Ink ink)
{
    SymbolPen pen ({}, middle, ink);
    pen.line ({ { -SheetGrid::signHalfWidth, 0 }, { SheetGrid::signHalfWidth, 0 } }, 2.2);
    return pen.take();
}

DrawnArea SchematicSymbol::dot (DrawingPoint middle, Ink ink)
{
    SymbolPen pen ({}, middle, ink);
    pen.circle ({ 0, 0 }, 2.6);
    return { pen.take().lines.front().points, ink, false };
}

} // namespace stopwright
