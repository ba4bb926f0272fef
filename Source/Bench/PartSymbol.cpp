// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/PartSymbol.h"

#include "Bench/DrawingPainter.h"
#include "Sheet/SchematicSymbol.h"

#include <cmath>
#include <utility>

namespace stopwright
{

namespace
{

constexpr auto reach =
    static_cast<float> (SheetGrid::leadSteps * SheetGrid::step); ///< from the middle to the leads' ends

void paint (juce::Graphics& graphics,
            const Palette& palette,
            SymbolStrokes strokes,
            juce::Rectangle<float> square,
            float thickness)
{
    const float scale = 0.5f * square.getWidth() / reach;
    for (auto& line : strokes.lines)
        line.width = static_cast<double> (thickness / scale);
    const juce::Graphics::ScopedSaveState saved (graphics);
    graphics.addTransform (juce::AffineTransform::scale (scale).translated (square.getCentre()));
    Drawing drawing;
    drawing.lines = std::move (strokes.lines);
    drawing.areas = std::move (strokes.areas);
    DrawingPainter (graphics, palette).paint (drawing);
}

} // namespace

void PartSymbol::draw (juce::Graphics& graphics,
                       const Palette& palette,
                       const PartValue& part,
                       juce::Rectangle<float> square,
                       float thickness)
{
    paint (graphics, palette, SchematicSymbol::of (part, {}, {}), square, thickness);
}

void PartSymbol::draw (juce::Graphics& graphics,
                       const Palette& palette,
                       const Wave& wave,
                       juce::Rectangle<float> square,
                       float thickness)
{
    paint (graphics, palette, SchematicSymbol::of (wave, {}), square, thickness);
}

void PartSymbol::drawSwing (juce::Graphics& graphics,
                            const Palette& palette,
                            juce::Rectangle<float> square,
                            int swings,
                            float thickness)
{
    constexpr int points = 32;
    SymbolStrokes strokes;
    auto& line = strokes.lines.emplace_back();
    for (int point = 0; point <= points; ++point)
    {
        const double along = 2.0 * point / points - 1.0;
        line.points.push_back (
            { reach * along, -0.64 * reach * std::sin (juce::MathConstants<double>::pi * swings * (along + 1.0)) });
    }
    paint (graphics, palette, std::move (strokes), square, thickness);
}

} // namespace stopwright
