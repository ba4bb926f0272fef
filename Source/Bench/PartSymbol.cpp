// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/PartSymbol.h"

#include <numbers>

namespace stopwright
{

namespace
{

/// Builds a path in a square of 100 by 100, y downward.
struct Pen
{
    juce::Path path;

    void line (float x1, float y1, float x2, float y2)
    {
        path.startNewSubPath (x1, y1);
        path.lineTo (x2, y2);
    }

    void polyline (std::initializer_list<juce::Point<float>> points)
    {
        bool isFirst = true;
        for (const auto& point : points)
        {
            if (isFirst)
                path.startNewSubPath (point);
            else
                path.lineTo (point);
            isFirst = false;
        }
    }

    void stroke (juce::Graphics& graphics, juce::Rectangle<float> square, float thickness) const
    {
        const auto place = juce::AffineTransform::scale (square.getWidth() / 100.0f, square.getHeight() / 100.0f)
                               .translated (square.getX(), square.getY());
        graphics.strokePath (path, juce::PathStrokeType (thickness, juce::PathStrokeType::mitered), place);
    }
};

void draw (Pen& pen, const Resistor&)
{
    pen.line (0, 50, 18, 50);
    pen.path.addRectangle (18.0f, 37.0f, 64.0f, 26.0f);
    pen.line (82, 50, 100, 50);
}

void draw (Pen& pen, const Capacitor&)
{
    pen.line (0, 50, 43, 50);
    pen.line (43, 24, 43, 76);
    pen.line (57, 24, 57, 76);
    pen.line (57, 50, 100, 50);
}

void draw (Pen& pen, const Inductor&)
{
    constexpr float half = std::numbers::pi_v<float> / 2.0f;
    pen.line (0, 58, 14, 58);
    for (int loop = 0; loop < 4; ++loop)
        pen.path.addCentredArc (23.0f + 18.0f * static_cast<float> (loop), 58.0f, 9.0f, 11.0f, 0.0f, -half, half, true);
    pen.line (86, 58, 100, 58);
}

void draw (Pen& pen, const Potentiometer&)
{
    pen.line (0, 62, 18, 62);
    pen.path.addRectangle (18.0f, 50.0f, 64.0f, 24.0f);
    pen.line (82, 62, 100, 62);
    pen.line (50, 16, 50, 50);
    pen.polyline ({ { 43, 38 }, { 50, 50 }, { 57, 38 } });
}

void draw (Pen& pen, const Switch& contact)
{
    pen.line (0, 58, 28, 58);
    pen.line (72, 58, 100, 58);
    if (contact.closed)
        pen.line (28, 58, 74, 52);
    else
        pen.line (28, 58, 70, 26);
}

void draw (Pen& pen, const OpAmp&)
{
    pen.path.addTriangle (20.0f, 14.0f, 20.0f, 86.0f, 86.0f, 50.0f);
    pen.line (0, 32, 20, 32);
    pen.line (0, 68, 20, 68);
    pen.line (86, 50, 100, 50);
    pen.line (27, 32, 39, 32);
    pen.line (33, 26, 33, 38);
    pen.line (27, 68, 39, 68);
}

void draw (Pen& pen, const Diode&)
{
    pen.line (0, 50, 100, 50);
    pen.path.addTriangle (32.0f, 28.0f, 32.0f, 72.0f, 68.0f, 50.0f);
    pen.line (68, 28, 68, 72);
}

/// Base from the left, collector up, emitter down; the arrow is the emitter's.
void drawTransistor (Pen& pen)
{
    pen.path.addEllipse (16.0f, 12.0f, 76.0f, 76.0f);
    pen.line (0, 50, 40, 50);
    pen.line (40, 28, 40, 72);
    pen.polyline ({ { 40, 42 }, { 70, 24 }, { 70, 0 } });
    pen.polyline ({ { 40, 58 }, { 70, 76 }, { 70, 100 } });
}

void draw (Pen& pen, const Npn&)
{
    drawTransistor (pen);
    pen.polyline ({ { 57, 76 }, { 69, 75 }, { 64, 65 } });
}

void draw (Pen& pen, const Pnp&)
{
    drawTransistor (pen);
    pen.polyline ({ { 52, 73 }, { 46, 62 }, { 58, 61 } });
}

/// One cell of a battery: the long plate is plus.
void draw (Pen& pen, const Supply&)
{
    pen.line (0, 50, 44, 50);
    pen.line (44, 20, 44, 80);
    pen.line (56, 35, 56, 65);
    pen.line (56, 50, 100, 50);
}

void drawShape (Pen& pen, const Wave& wave)
{
    switch (wave.kind)
    {
        case WaveKind::square:
            pen.polyline ({ { 30, 50 }, { 30, 36 }, { 50, 36 }, { 50, 64 }, { 70, 64 }, { 70, 50 } });
            break;
        case WaveKind::pulse:
            pen.polyline ({ { 30, 60 }, { 38, 60 }, { 38, 34 }, { 48, 34 }, { 48, 60 }, { 70, 60 } });
            break;
        case WaveKind::staircase:
            pen.polyline ({ { 30, 64 },
                            { 30, 34 },
                            { 40, 34 },
                            { 40, 44 },
                            { 50, 44 },
                            { 50, 54 },
                            { 60, 54 },
                            { 60, 64 },
                            { 70, 64 },
                            { 70, 34 } });
            break;
        case WaveKind::rounded:
            pen.path.startNewSubPath (29, 62);
            pen.path.quadraticTo (32, 36, 50, 36);
            pen.path.quadraticTo (53, 62, 71, 62);
            break;
        case WaveKind::triangle:
            pen.polyline ({ { 28, 50 }, { 39, 36 }, { 61, 64 }, { 72, 50 } });
            break;
        case WaveKind::sawtooth:
            pen.polyline ({ { 30, 50 }, { 30, 36 }, { 69, 64 }, { 69, 50 } });
            break;
        case WaveKind::outphased:
            pen.polyline ({ { 30, 50 }, { 30, 36 }, { 50, 44 }, { 50, 64 }, { 70, 56 }, { 70, 50 } });
            break;
    }
}

} // namespace

void PartSymbol::draw (juce::Graphics& graphics, const PartValue& part, juce::Rectangle<float> square, float thickness)
{
    Pen pen;
    std::visit ([&] (const auto& value) { stopwright::draw (pen, value); }, part);
    pen.stroke (graphics, square, thickness);
}

void PartSymbol::draw (juce::Graphics& graphics, const Wave& wave, juce::Rectangle<float> square, float thickness)
{
    Pen pen;
    pen.path.addEllipse (20.0f, 20.0f, 60.0f, 60.0f);
    pen.line (80, 50, 100, 50);
    drawShape (pen, wave);
    pen.stroke (graphics, square, thickness);
}

void PartSymbol::drawSwing (juce::Graphics& graphics, juce::Rectangle<float> square, int swings, float thickness)
{
    constexpr int points = 32;
    juce::Path path;
    for (int point = 0; point <= points; ++point)
    {
        const float along = static_cast<float> (point) / points;
        const float swing = std::sin (juce::MathConstants<float>::twoPi * static_cast<float> (swings) * along);
        const juce::Point<float> place { square.getX() + along * square.getWidth(),
                                         square.getCentreY() - 0.32f * swing * square.getHeight() };
        if (point == 0)
            path.startNewSubPath (place);
        else
            path.lineTo (place);
    }
    graphics.strokePath (path, juce::PathStrokeType (thickness));
}

} // namespace stopwright
